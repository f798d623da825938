using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Visits;

/// <summary>The units each fact may be answered in.</summary>
public static class FactUnits
{
    /// <summary>The site's default first; empty for a fact that takes no number.</summary>
    public static ImmutableArray<UnitOfMeasure> For(Fact fact, UnitSystem units)
    {
        var us = units == UnitSystem.Us;
        return fact.Kind switch
        {
            FactKind.Temperature => us ? [UnitOfMeasure.Fahrenheit, UnitOfMeasure.Celsius] : [UnitOfMeasure.Celsius, UnitOfMeasure.Fahrenheit],
            FactKind.TemperatureDifference => us
                ? [UnitOfMeasure.FahrenheitDifference, UnitOfMeasure.KelvinDifference]
                : [UnitOfMeasure.KelvinDifference, UnitOfMeasure.FahrenheitDifference],
            FactKind.Pressure => us
                ? [UnitOfMeasure.Psig, UnitOfMeasure.InchesOfMercuryVacuum, UnitOfMeasure.Bar, UnitOfMeasure.Kilopascal]
                : [UnitOfMeasure.Bar, UnitOfMeasure.Kilopascal, UnitOfMeasure.Psig, UnitOfMeasure.InchesOfMercuryVacuum],
            FactKind.TemperatureOrPressure => us ? [UnitOfMeasure.Psig, UnitOfMeasure.Fahrenheit] : [UnitOfMeasure.Bar, UnitOfMeasure.Celsius],
            FactKind.Vacuum => us
                ? [UnitOfMeasure.Micron, UnitOfMeasure.Torr, UnitOfMeasure.Pascal, UnitOfMeasure.Millibar]
                : [UnitOfMeasure.Pascal, UnitOfMeasure.Millibar, UnitOfMeasure.Micron, UnitOfMeasure.Torr],
            FactKind.Mass => us ? [UnitOfMeasure.Pound, UnitOfMeasure.Ounce, UnitOfMeasure.Kilogram] : [UnitOfMeasure.Kilogram, UnitOfMeasure.Gram, UnitOfMeasure.Pound],
            FactKind.Current => [UnitOfMeasure.Ampere],
            FactKind.Voltage => [UnitOfMeasure.Volt],
            FactKind.Length => us ? [UnitOfMeasure.Foot, UnitOfMeasure.Meter] : [UnitOfMeasure.Meter, UnitOfMeasure.Foot],
            FactKind.Volume => us ? [UnitOfMeasure.CubicFoot, UnitOfMeasure.Liter] : [UnitOfMeasure.Liter, UnitOfMeasure.CubicFoot],
            FactKind.Time => [UnitOfMeasure.Minute, UnitOfMeasure.Second, UnitOfMeasure.Hour],
            _ => [],
        };
    }

    /// <summary>The unit of that symbol as the fact can have it, or null: "degF" of a superheat is a difference, of a room a point.</summary>
    public static UnitOfMeasure? Find(Fact fact, string symbol) => fact.Kind switch
    {
        FactKind.Temperature => UnitOfMeasure.Find(symbol, Dimension.Temperature),
        FactKind.TemperatureDifference => UnitOfMeasure.Find(symbol, Dimension.TemperatureDifference),
        FactKind.Pressure => UnitOfMeasure.Find(symbol, Dimension.Pressure),
        FactKind.TemperatureOrPressure => UnitOfMeasure.Find(symbol, Dimension.Pressure) ?? UnitOfMeasure.Find(symbol, Dimension.Temperature),
        FactKind.Vacuum => UnitOfMeasure.Find(symbol, Dimension.Vacuum),
        FactKind.Mass => UnitOfMeasure.Find(symbol, Dimension.Mass),
        FactKind.Current => UnitOfMeasure.Find(symbol, Dimension.Current),
        FactKind.Voltage => UnitOfMeasure.Find(symbol, Dimension.Voltage),
        FactKind.Length => UnitOfMeasure.Find(symbol, Dimension.Length),
        FactKind.Volume => UnitOfMeasure.Find(symbol, Dimension.Volume),
        FactKind.Time => UnitOfMeasure.Find(symbol, Dimension.Time),
        _ => null,
    };
}
