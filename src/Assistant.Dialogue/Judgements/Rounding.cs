using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Judgements;

/// <summary>A reading exactly at a limit is at it, whatever the conversion of its unit does to the last bit.</summary>
internal static class Rounding
{
    private static readonly TemperatureDifference LastBit = new(1e-6);

    public static bool IsOver(CelsiusTemperature reading, CelsiusTemperature limit) => reading > limit + LastBit;

    public static bool IsUnder(CelsiusTemperature reading, CelsiusTemperature limit) => reading < limit - LastBit;

    public static bool IsOver(TemperatureDifference reading, TemperatureDifference limit) => reading.Kelvins > limit.Kelvins + LastBit.Kelvins;

    public static bool IsUnder(TemperatureDifference reading, TemperatureDifference limit) => reading.Kelvins < limit.Kelvins - LastBit.Kelvins;
}
