using System.Collections.Immutable;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using UnitsNet;

namespace Assistant.Trade.Sums;

/// <summary>A point of the dome.</summary>
public readonly record struct DomePoint(AbsolutePressure Pressure, SpecificEnergy Enthalpy);

/// <summary>The two branches of a refrigerant's dome in a pressure-enthalpy picture, each from cold to warm.</summary>
/// <param name="Bubble">Saturated liquid at the bubble pressure.</param>
/// <param name="Dew">Saturated vapour at the dew pressure.</param>
public sealed record SaturationDome(ImmutableArray<DomePoint> Bubble, ImmutableArray<DomePoint> Dew)
{
    /// <summary>The dome over the whole table, which ends a kelvin or so below the critical point.</summary>
    /// <param name="points">Points a branch, at least two.</param>
    public static SaturationDome Of(Refrigerant refrigerant, int points)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 2);
        var table = refrigerant.Saturation;
        var (low, high) = (table.Temperatures.Lowest.Degrees, table.Temperatures.Highest.Degrees);
        var temperatures = Enumerable.Range(0, points).Select(i => new CelsiusTemperature(low + ((high - low) * i / (points - 1)))).ToImmutableArray();
        return new(
            [.. temperatures.Select(t => new DomePoint(table.BubblePressure(t), table.LiquidEnthalpy(t)))],
            [.. temperatures.Select(t => new DomePoint(table.DewPressure(t), table.VapourEnthalpy(t)))]);
    }
}
