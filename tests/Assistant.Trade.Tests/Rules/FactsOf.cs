using System.Globalization;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Trade.Tests.Rules;

/// <summary>Writes a set of facts the short way: "suction_pressure 14 psig", "sight_glass flashing".</summary>
internal static class FactsOf
{
    public static FactSet Visit(params string[] lines) => FactSet.Of(lines.Select(Value));

    public static FactValue Value(string line)
    {
        var parts = line.Split(' ', 3);
        var fact = FactCatalogue.Find(parts[0]) ?? throw new ArgumentException($"no such fact: {parts[0]}");
        if (!fact.IsQuantity)
        {
            return new Observation(fact, parts[1]);
        }

        var unit = UnitOfMeasure.All.First(u => u.Symbol == parts[2] && Fits(fact.Kind, u.Dimension));
        return new Reading(fact, double.Parse(parts[1], CultureInfo.InvariantCulture), unit);
    }

    private static bool Fits(FactKind kind, Dimension dimension) =>
        kind.ToString() == dimension.ToString()
        || (kind == FactKind.TemperatureOrPressure && dimension is Dimension.Temperature or Dimension.Pressure);
}
