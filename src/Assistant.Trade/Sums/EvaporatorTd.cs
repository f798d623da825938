using Assistant.Trade.Quantities;

namespace Assistant.Trade.Sums;

/// <summary>How far the air on the coil is above the evaporating temperature.</summary>
public static class EvaporatorTd
{
    /// <summary>Air on the coil - T_dew(suction), K. Source: ASHRAE Handbook - Refrigeration (from memory).</summary>
    /// <param name="airOn">Air entering the coil, else the room's.</param>
    public static TemperatureDifference Of(CelsiusTemperature airOn, CelsiusTemperature saturatedSuction) => airOn - saturatedSuction;

    /// <summary>The usual TD of a walk-in where neither plate nor record says it: 8 to 12 degF. Source: ASHRAE Handbook - Refrigeration (from memory).</summary>
    public static (TemperatureDifference Low, TemperatureDifference High) Usual { get; } =
        (TemperatureDifference.FromFahrenheitDegrees(8), TemperatureDifference.FromFahrenheitDegrees(12));
}
