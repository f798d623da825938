using System.Collections.Immutable;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Trade.Facts;

/// <summary>All that a visit knows now, one value a fact. Gives each in the form the sums take, with the site's own barometer.</summary>
public sealed class FactSet
{
    public static FactSet Empty { get; } = new(ImmutableDictionary<Fact, FactValue>.Empty);

    private readonly ImmutableDictionary<Fact, FactValue> values;

    private FactSet(ImmutableDictionary<Fact, FactValue> values)
    {
        this.values = values;
        Barometer = Atmosphere.BarometricPressure(Quantity(FactCatalogue.Altitude, Dimension.Length) ?? 0);
    }

    public static FactSet Of(params IEnumerable<FactValue> values) =>
        new(values.ToImmutableDictionary(v => v.Fact, v => v));

    /// <summary>The site's barometric pressure by its altitude; the standard atmosphere where none is known.</summary>
    public AbsolutePressure Barometer { get; }

    public IEnumerable<FactValue> Values => values.Values;

    public bool Has(Fact fact) => values.ContainsKey(fact);

    public FactValue? Find(Fact fact) => values.GetValueOrDefault(fact);

    public FactSet With(FactValue value) => new(values.SetItem(value.Fact, value));

    public FactSet Without(Fact fact) => new(values.Remove(fact));

    /// <summary>The word observed for a choice or yes/no fact, or null.</summary>
    public string? Word(Fact fact) => (values.GetValueOrDefault(fact) as Observation)?.Value;

    public bool Is(Fact fact, string word) => Word(fact) == word;

    public CelsiusTemperature? Temperature(Fact fact) => Quantity(fact, Dimension.Temperature) is { } degrees ? new(degrees) : null;

    public TemperatureDifference? Difference(Fact fact) => Quantity(fact, Dimension.TemperatureDifference) is { } kelvins ? new(kelvins) : null;

    /// <summary>The absolute pressure, counting the site's barometer for a gauge reading and nothing for an absolute one.</summary>
    public AbsolutePressure? Pressure(Fact fact)
    {
        if (values.GetValueOrDefault(fact) is not Reading { Unit.Dimension: Dimension.Pressure } reading)
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
        values.GetValueOrDefault(fact) is Reading reading && reading.Unit.Dimension == dimension ? reading.Canonical : null;
}
