using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using static Assistant.Trade.Quantities.UnitOfMeasure;

namespace Assistant.Trade.Rules.Plausibility;

/// <summary>How a reading is usually miswritten: in the other unit, or without its minus.</summary>
internal static class Rereading
{
    private static readonly UnitOfMeasure[] Temperatures = [Fahrenheit, Celsius];

    private static readonly UnitOfMeasure[] Pressures = [Psig, UnitOfMeasure.Bar, Kilopascal, InchesOfMercuryVacuum];

    /// <summary>The same number in each other unit of its dimension, and with its sign turned.</summary>
    public static IEnumerable<Reading> Of(Reading reading)
    {
        if (reading.Unit.Dimension is not (Dimension.Temperature or Dimension.Pressure))
        {
            yield break;
        }

        foreach (var unit in reading.Unit.Dimension == Dimension.Temperature ? Temperatures : Pressures)
        {
            if (unit != reading.Unit)
            {
                yield return reading with { Unit = unit };
            }
        }

        if (reading.Unit.Dimension == Dimension.Temperature)
        {
            yield return reading with { Value = -reading.Value };
        }
    }
}
