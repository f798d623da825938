using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Trade.Rules.Evidence;

/// <summary>Whether two values of one fact, read within moments by two people, can be the same thing read with two instruments.</summary>
public static class InstrumentError
{
    /// <summary>Half an ounce, in kg: what a refrigerant scale shows. Common practice.</summary>
    private const double MassKilograms = 0.0142;

    /// <summary>Two vacuum gauges of the heated kind: 10 %, common practice.</summary>
    private const double VacuumShare = 0.1;

    /// <summary>Tape measures, clocks, meters: 2 %, common practice.</summary>
    private const double OtherShare = 0.02;

    private const double RoundingShare = 1e-9;

    /// <summary>
    /// True where two readings are within the instrument's error: 1 psi, 1 degF, for a difference of temperatures two errors, 2 % of a
    /// current; or where two observations are the same word.
    /// </summary>
    public static bool Agree(FactValue one, FactValue other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        return one is Reading a && other is Reading b
            ? a.Unit.Dimension == b.Unit.Dimension && Math.Abs(a.Canonical - b.Canonical) <= Error(a, b) + (RoundingShare * Math.Max(Math.Abs(a.Canonical), Math.Abs(b.Canonical)))
            : one == other;
    }

    // In the canonical unit of the dimension: kPa, K, kg, Pa, A.
    private static double Error(Reading a, Reading b)
    {
        var size = Math.Max(Math.Abs(a.Canonical), Math.Abs(b.Canonical));
        return a.Unit.Dimension switch
        {
            Dimension.Pressure => Instruments.PressurePascals / 1000,
            Dimension.Temperature => Instruments.TemperatureKelvins,
            Dimension.TemperatureDifference => Instruments.SaidOutrightErrors * Instruments.TemperatureKelvins,
            Dimension.Mass => MassKilograms,
            Dimension.Vacuum => VacuumShare * size,
            Dimension.Current => Instruments.CurrentShare * size,
            _ => OtherShare * size,
        };
    }
}
