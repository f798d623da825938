using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Trade.Facts;

/// <summary>All that a visit knows now, one value a fact. Gives each in the form the sums take, with the site's own barometer.</summary>
public sealed class FactSet
{
    public static FactSet Empty { get; } = new(new FactValue?[FactCatalogue.All.Count]);

    // One place a fact: a set is read some hundred times an assessment and holds few facts, so it is an array and not a dictionary.
    private readonly FactValue?[] values;

    private FactSet(FactValue?[] values)
    {
        this.values = values;
        Barometer = Atmosphere.BarometricPressure(Quantity(FactCatalogue.Altitude, Dimension.Length) ?? 0);
    }

    /// <exception cref="ArgumentException">A fact is given twice.</exception>
    public static FactSet Of(params IEnumerable<FactValue> values)
    {
        var places = new FactValue?[FactCatalogue.All.Count];
        foreach (var value in values)
        {
            places[value.Fact.Index] = places[value.Fact.Index] is null ? value : throw new ArgumentException($"{value.Fact} is given twice", nameof(values));
        }

        return new(places);
    }

    /// <summary>The site's barometric pressure by its altitude; the standard atmosphere where none is known.</summary>
    public AbsolutePressure Barometer { get; }

    /// <summary>What is known, in the catalogue's order.</summary>
    public IEnumerable<FactValue> Values => values.Where(v => v is not null)!;

    public bool Has(Fact fact) => values[fact.Index] is not null;

    public FactValue? Find(Fact fact) => values[fact.Index];

    public FactSet With(FactValue value) => Replaced(value.Fact, value);

    public FactSet Without(Fact fact) => Replaced(fact, null);

    /// <summary>The word observed for a choice or yes/no fact, or null.</summary>
    public string? Word(Fact fact) => (values[fact.Index] as Observation)?.Value;

    public bool Is(Fact fact, string word) => Word(fact) == word;

    public CelsiusTemperature? Temperature(Fact fact) => Quantity(fact, Dimension.Temperature) is { } degrees ? new(degrees) : null;

    public TemperatureDifference? Difference(Fact fact) => Quantity(fact, Dimension.TemperatureDifference) is { } kelvins ? new(kelvins) : null;

    /// <summary>The absolute pressure, counting the site's barometer for a gauge reading and nothing for an absolute one.</summary>
    public AbsolutePressure? Pressure(Fact fact)
    {
        if (values[fact.Index] is not Reading { Unit.Dimension: Dimension.Pressure } reading)
        {
            return null;
        }

        var kilopascals = reading.Canonical;
        return reading.Unit.IsAbsolutePressure
            ? new((kilopascals + UnitOfMeasure.StandardAtmosphereKilopascals) * 1000)
            : new GaugePressure(kilopascals * 1000).ToAbsolute(Barometer);
    }

    /// <summary>The canonical value where the fact is known in that dimension: kg, A, V, m, m3, s, Pa absolute for a vacuum.</summary>
    public double? Quantity(Fact fact, Dimension dimension) =>
        values[fact.Index] is Reading reading && reading.Unit.Dimension == dimension ? reading.Canonical : null;

    private FactSet Replaced(Fact fact, FactValue? value)
    {
        var places = (FactValue?[])values.Clone();
        places[fact.Index] = value;
        return new(places);
    }
}
