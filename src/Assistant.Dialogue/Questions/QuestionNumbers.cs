using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Questions;

/// <summary>Finds the number of a question that can stand for a quantity, in the site's units where it was bare but its fact was named.</summary>
internal static class QuestionNumbers
{
    /// <summary>
    /// The number named as one of <paramref name="facts"/>, else the first of that dimension that was named as nothing; null where there is none.
    /// </summary>
    /// <param name="facts">None: any number of the dimension will do.</param>
    public static QuestionNumber? Find(QuestionArguments arguments, Dimension dimension, ReadOnlySpan<Fact> facts)
    {
        QuestionNumber? unnamed = null;
        foreach (var number in arguments.Numbers)
        {
            if (!Fits(number, dimension))
            {
                continue;
            }

            if (number.Fact is not null && (facts.IsEmpty || facts.Contains(number.Fact)))
            {
                return number;
            }

            unnamed ??= number.Fact is null ? number : null;
        }

        return unnamed;
    }

    /// <summary>The unit a number of that dimension was said in, or that the site means.</summary>
    public static UnitOfMeasure UnitOf(QuestionNumber number, Dimension dimension, UnitSystem units) => (number.Unit, dimension) switch
    {
        ({ Dimension: Dimension.Temperature } said, Dimension.TemperatureDifference) => Fahrenheit(said) ? UnitOfMeasure.FahrenheitDifference : UnitOfMeasure.KelvinDifference,
        ({ Dimension: Dimension.TemperatureDifference } said, Dimension.Temperature) => Fahrenheit(said) ? UnitOfMeasure.Fahrenheit : UnitOfMeasure.Celsius,
        ({ } said, _) => said,
        _ => SiteDefault(dimension, units)!,
    };

    private static bool Fits(QuestionNumber number, Dimension dimension)
    {
        if (number.Unit is { } unit)
        {
            return unit.Dimension == dimension
                || (dimension == Dimension.TemperatureDifference && unit.Dimension == Dimension.Temperature && KindFits(number.Fact, dimension))
                || (dimension == Dimension.Temperature && unit.Dimension == Dimension.TemperatureDifference && number.Fact is not null && KindFits(number.Fact, dimension));
        }

        return number.Fact is not null && KindFits(number.Fact, dimension) && SiteDefault(dimension, UnitSystem.Us) is not null;
    }

    // "degrees" alone may be a point or a difference: the fact decides where one was named.
    private static bool KindFits(Fact? fact, Dimension dimension) => fact?.Kind switch
    {
        null => true,
        FactKind.Temperature => dimension == Dimension.Temperature,
        FactKind.TemperatureDifference => dimension == Dimension.TemperatureDifference,
        FactKind.Pressure => dimension == Dimension.Pressure,
        FactKind.TemperatureOrPressure => dimension is Dimension.Temperature or Dimension.Pressure,
        FactKind.Mass => dimension == Dimension.Mass,
        FactKind.Vacuum => dimension == Dimension.Vacuum,
        FactKind.Volume => dimension == Dimension.Volume,
        FactKind.Length => dimension == Dimension.Length,
        FactKind.Time => dimension == Dimension.Time,
        _ => false,
    };

    private static bool Fahrenheit(UnitOfMeasure unit) => unit == UnitOfMeasure.Fahrenheit || unit == UnitOfMeasure.FahrenheitDifference;

    private static UnitOfMeasure? SiteDefault(Dimension dimension, UnitSystem units)
    {
        var us = units == UnitSystem.Us;
        return dimension switch
        {
            Dimension.Pressure => us ? UnitOfMeasure.Psig : UnitOfMeasure.Bar,
            Dimension.Temperature => us ? UnitOfMeasure.Fahrenheit : UnitOfMeasure.Celsius,
            Dimension.TemperatureDifference => us ? UnitOfMeasure.FahrenheitDifference : UnitOfMeasure.KelvinDifference,
            Dimension.Mass => us ? UnitOfMeasure.Pound : UnitOfMeasure.Kilogram,
            Dimension.Length => us ? UnitOfMeasure.Foot : UnitOfMeasure.Meter,
            Dimension.Volume => us ? UnitOfMeasure.CubicFoot : UnitOfMeasure.CubicMeter,
            Dimension.Vacuum => us ? UnitOfMeasure.Micron : null,
            _ => null,
        };
    }
}
