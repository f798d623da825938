using System.Collections.Immutable;
using Assistant.Trade.Quantities;
using UnitsNet;

namespace Assistant.Trade.Sums;

/// <summary>A reading of an isolated system under vacuum.</summary>
/// <param name="Elapsed">Since the pump was shut off.</param>
public readonly record struct VacuumReading(Duration Elapsed, AbsolutePressure Pressure);

public enum VacuumVerdict
{
    /// <summary>Low, and levelled: dry and tight.</summary>
    Tight,

    /// <summary>Levelling out too high, towards the vapour pressure of water: there is moisture in it.</summary>
    Moisture,

    /// <summary>Climbing without end, or above what water can explain: it leaks.</summary>
    Leak,

    /// <summary>Flat, but the pump was shut off above the target: pump on.</summary>
    NotDeepEnough,

    /// <summary>Not isolated long enough, or not read often enough, to tell.</summary>
    TooShort,
}

/// <summary>Judges the course of a vacuum after isolation.</summary>
public static class VacuumDecay
{
    /// <summary>The pump is shut off below this: 500 micron. Common practice.</summary>
    public static AbsolutePressure Target { get; } = Microns(500);

    /// <summary>An isolated system stays below this: 1000 micron. Common practice.</summary>
    public static AbsolutePressure Ceiling { get; } = Microns(1000);

    /// <summary>Isolated for at least so long. Common practice.</summary>
    public static Duration ShortestTest { get; } = Duration.FromMinutes(15);

    // A climb that has lost half its first speed is levelling; a leak's climb stays straight while the vacuum is deep.
    private const double LevellingShare = 0.5;

    // A rise of a twentieth of the ceiling over the whole test is what gauges drift.
    private static readonly double Flat = Ceiling.Pascals / 20;

    /// <summary>
    /// The verdict over readings in the order of time, the first at isolation. A straight climb leaks, whatever it reached; one that levels
    /// is moisture where it levels above the ceiling; above the vapour pressure of water at the warmest place only a leak explains it.
    /// Source: kinetics of a constant inflow against an evaporation that stops at saturation; limits common practice.
    /// </summary>
    /// <param name="warmest">The warmest place of the system, where water would stand highest.</param>
    /// <exception cref="ArgumentException">The readings are not in the order of time.</exception>
    public static VacuumVerdict Judge(ImmutableArray<VacuumReading> readings, CelsiusTemperature warmest)
    {
        for (var i = 1; i < readings.Length; i++)
        {
            if (readings[i].Elapsed <= readings[i - 1].Elapsed)
            {
                throw new ArgumentException("vacuum readings must be in the order of time", nameof(readings));
            }
        }

        if (readings.Length == 0)
        {
            return VacuumVerdict.TooShort;
        }

        var (first, last) = (readings[0], readings[^1]);
        if (readings.Length > 1 && last.Pressure.Pascals > WaterVapour.At(warmest).Pascals && last.Pressure > Ceiling && last.Pressure > first.Pressure)
        {
            return VacuumVerdict.Leak;
        }

        if (readings.Length < 3 || last.Elapsed - first.Elapsed < ShortestTest)
        {
            return VacuumVerdict.TooShort;
        }

        var levelled = last.Pressure.Pascals - first.Pressure.Pascals <= Flat || LateSpeed(readings) < LevellingShare * EarlySpeed(readings);
        return !levelled ? VacuumVerdict.Leak
            : last.Pressure >= Ceiling ? VacuumVerdict.Moisture
            : first.Pressure > Target ? VacuumVerdict.NotDeepEnough
            : VacuumVerdict.Tight;
    }

    /// <summary>True where ice at the coldest place keeps its vapour below the ceiling: a wet system then passes the test, and a pump will not dry it.</summary>
    public static bool HidesIce(CelsiusTemperature coldest) => WaterVapour.At(coldest) < Ceiling;

    private static AbsolutePressure Microns(double microns) => new(UnitOfMeasure.Micron.ToCanonical(microns));

    private static double EarlySpeed(ImmutableArray<VacuumReading> readings) => Speed(readings[0], readings[Middle(readings)]);

    private static double LateSpeed(ImmutableArray<VacuumReading> readings) => Speed(readings[Middle(readings)], readings[^1]);

    // The reading nearest to half time, never the first or the last.
    private static int Middle(ImmutableArray<VacuumReading> readings)
    {
        var half = (readings[0].Elapsed + readings[^1].Elapsed) / 2;
        return Enumerable.Range(1, readings.Length - 2).MinBy(i => Math.Abs((readings[i].Elapsed - half).Seconds));
    }

    private static double Speed(VacuumReading from, VacuumReading to) =>
        (to.Pressure.Pascals - from.Pressure.Pascals) / (to.Elapsed - from.Elapsed).Seconds;
}
