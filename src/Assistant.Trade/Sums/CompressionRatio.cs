using Assistant.Trade.Quantities;

namespace Assistant.Trade.Sums;

/// <summary>How hard a compressor works.</summary>
public static class CompressionRatio
{
    /// <summary>Above about ten a single stage is hard pressed. Common practice.</summary>
    public const double HardOnASingleStage = 10;

    /// <summary>Discharge over suction pressure, both absolute; a pure number. Source: definition.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The suction pressure is not above a perfect vacuum.</exception>
    public static double Of(AbsolutePressure discharge, AbsolutePressure suction)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(suction.Pascals, nameof(suction));
        return discharge.Pascals / suction.Pascals;
    }
}
