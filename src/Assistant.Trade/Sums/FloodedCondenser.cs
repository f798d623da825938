using Assistant.Trade.Quantities;

namespace Assistant.Trade.Sums;

/// <summary>How much of a condenser a head pressure valve must keep full of liquid.</summary>
public static class FloodedCondenser
{
    /// <summary>
    /// 1 - q * split / (SCT held - ambient), between 0 and 1. First principles: rejection is proportional to the active area times the
    /// temperature difference. 90 degF held, 30 degF split, 0 degF outside: 0.67.
    /// </summary>
    /// <param name="held">The condensing temperature the control holds, dew.</param>
    /// <param name="designSplit">Split at design rejection with the whole surface active.</param>
    /// <param name="rejectionShare">Present over design rejection; 1 where it is not known.</param>
    public static double Fraction(CelsiusTemperature held, TemperatureDifference designSplit, CelsiusTemperature ambient, double rejectionShare = 1)
    {
        var driving = held - ambient;
        var needed = rejectionShare * designSplit.Kelvins;
        return driving.Kelvins > needed ? 1 - (needed / driving.Kelvins) : 0;
    }
}
