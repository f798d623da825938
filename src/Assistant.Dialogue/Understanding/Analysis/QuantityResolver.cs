using Assistant.Dialogue.Understanding.Units;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Makes a reading of a number once it is known what was read, by the unit said or the site's own; or says what is open.</summary>
internal static class QuantityResolver
{
    /// <summary>Nobody means more bar than this.</summary>
    private const double MostBareBar = 45;

    /// <summary>A bare vacuum below this is no micron reading.</summary>
    private const double FewestBareMicrons = 10;

    /// <summary>Either a reading or what must be asked back; where the number can not be, that too.</summary>
    public static (Reading? Reading, Clarify? Open, Reading? Impossible) Resolve(SaidNumber number, Fact fact, UnitSystem site)
    {
        if (number.Open is { } open)
        {
            return (null, open, null);
        }

        if (number.NotNow && fact.Place != Place.Record && fact != FactCatalogue.Setpoint && fact != FactCatalogue.Differential)
        {
            return (null, Clarify.Value, null);
        }

        if (number.OverAmbient && fact != FactCatalogue.DesignCondenserSplit && fact != FactCatalogue.CondenserSplit)
        {
            return (null, Clarify.Value, null);
        }

        if ((number.Comma && site == UnitSystem.Metric) || (number.Joined && fact == FactCatalogue.SuctionPressure) || (number.BareOunces && fact.Kind != FactKind.Mass))
        {
            return (null, Clarify.Value, null);
        }

        var value = number.Value;
        UnitOfMeasure? unit;
        if (number.Kilo && fact.Kind != FactKind.TemperatureDifference)
        {
            value *= 1000;
            (unit, var kiloOpen) = OfTheSite(fact.Kind, value, site);
            return Checked(fact, value, unit, kiloOpen);
        }

        if (number.Units.Count == 0)
        {
            (unit, var bareOpen) = OfTheSite(fact.Kind, value, site);
            return Checked(fact, value, unit, bareOpen);
        }

        unit = Said(number.Units, fact.Kind, site);
        if (unit is null)
        {
            if (!number.IsBare)
            {
                return (null, Clarify.Fact, null);
            }

            (unit, var everydayOpen) = OfTheSite(fact.Kind, value, site);
            return Checked(fact, value, unit, everydayOpen);
        }

        // "-5 inHg" is a vacuum of five inches: the minus says it twice.
        return Checked(fact, unit == UnitOfMeasure.InchesOfMercuryVacuum ? Math.Abs(value) : value, unit, null);
    }

    /// <summary>Whether the number's unit, where one is said, can measure the fact.</summary>
    public static bool Fits(SaidNumber number, Fact fact) =>
        fact.IsQuantity && (number.Kilo ? fact.Kind != FactKind.Temperature : number.IsBare || Said(number.Units, fact.Kind, UnitSystem.Us) is not null);

    private static (Reading?, Clarify?, Reading?) Checked(Fact fact, double value, UnitOfMeasure? unit, Clarify? open)
    {
        if (open is not null || unit is null)
        {
            return (null, open ?? Clarify.Unit, null);
        }

        var reading = new Reading(fact, value, unit);
        return PhysicalLimits.Allow(reading) ? (reading, null, null) : (null, Clarify.Value, reading);
    }

    private static UnitOfMeasure? Said(IReadOnlyList<UnitWord> words, FactKind kind, UnitSystem site)
    {
        UnitOfMeasure? everyday = null;
        foreach (var word in words)
        {
            var unit = word.Unit ?? DegreesOf(kind, site);
            if (unit is null || !Measures(unit.Dimension, kind))
            {
                continue;
            }

            if (!word.Everyday)
            {
                return unit;
            }

            everyday ??= unit;
        }

        return everyday;
    }

    private static bool Measures(Dimension dimension, FactKind kind) => kind switch
    {
        FactKind.Temperature => dimension == Dimension.Temperature,
        FactKind.TemperatureDifference => dimension == Dimension.TemperatureDifference,
        FactKind.Pressure => dimension == Dimension.Pressure,
        FactKind.TemperatureOrPressure => dimension is Dimension.Temperature or Dimension.Pressure,
        FactKind.Vacuum => dimension == Dimension.Vacuum,
        FactKind.Mass => dimension == Dimension.Mass,
        FactKind.Current => dimension == Dimension.Current,
        FactKind.Voltage => dimension == Dimension.Voltage,
        FactKind.Length => dimension == Dimension.Length,
        FactKind.Volume => dimension == Dimension.Volume,
        FactKind.Time => dimension == Dimension.Time,
        _ => false,
    };

    private static UnitOfMeasure? DegreesOf(FactKind kind, UnitSystem site) => kind switch
    {
        FactKind.Temperature or FactKind.TemperatureOrPressure => site == UnitSystem.Us ? UnitOfMeasure.Fahrenheit : UnitOfMeasure.Celsius,
        FactKind.TemperatureDifference => site == UnitSystem.Us ? UnitOfMeasure.FahrenheitDifference : UnitOfMeasure.KelvinDifference,
        _ => null,
    };

    // What a bare number means at this site, or that it must be asked.
    private static (UnitOfMeasure? Unit, Clarify? Open) OfTheSite(FactKind kind, double value, UnitSystem site)
    {
        var us = site == UnitSystem.Us;
        return kind switch
        {
            FactKind.Pressure when us => value < 0 ? (null, Clarify.Unit) : (UnitOfMeasure.Psig, null),
            FactKind.Pressure => value > MostBareBar ? (null, Clarify.Unit) : (UnitOfMeasure.Bar, null),
            FactKind.Vacuum when us && value < 0 => (null, Clarify.Value),
            FactKind.Vacuum => us && value >= FewestBareMicrons ? (UnitOfMeasure.Micron, null) : (null, Clarify.Unit),
            FactKind.Temperature or FactKind.TemperatureDifference => (DegreesOf(kind, site), null),
            FactKind.Mass => (us ? UnitOfMeasure.Pound : UnitOfMeasure.Kilogram, null),
            FactKind.Current => (UnitOfMeasure.Ampere, null),
            FactKind.Voltage => (UnitOfMeasure.Volt, null),
            FactKind.Length => (us ? UnitOfMeasure.Foot : UnitOfMeasure.Meter, null),
            _ => (null, Clarify.Unit),
        };
    }
}
