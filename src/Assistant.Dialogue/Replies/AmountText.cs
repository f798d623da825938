using System.Globalization;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Replies;

/// <summary>
/// Numbers as they are written and spoken: in the hearer's units, with no more digits than the trade reads. US: psig, °F, lb,
/// micron, ft, and below the atmosphere inches of mercury vacuum; metric: bar, °C, K, kg, Pa, m.
/// </summary>
public static class AmountText
{
    /// <summary>Such as "41 °F", "8.5 inHg vacuum", "24.0 bar".</summary>
    public static string Written(Amount amount, UnitSystem units)
    {
        var unit = UnitFor(amount, units);
        return Number(unit.FromCanonical(amount.Canonical), unit) + WrittenSymbol(unit);
    }

    /// <summary>A reading as it was said, in the unit it was said in and with its digits: a number is repeated, never converted.</summary>
    public static string Written(Reading reading) =>
        reading.Value.ToString("0.###", CultureInfo.InvariantCulture) + WrittenSymbol(reading.Unit);

    /// <summary>For the ear: "41 degrees", "minus 8.5 degrees", "117 P S I", "8.5 inches of vacuum".</summary>
    public static string Spoken(Amount amount, UnitSystem units)
    {
        var unit = UnitFor(amount, units);
        var number = Number(unit.FromCanonical(amount.Canonical), unit);
        return (number[0] == '-' ? "minus " + number[1..] : number) + SpokenSymbol(unit);
    }

    /// <inheritdoc cref="Spoken(Amount, UnitSystem)"/>
    public static string Spoken(Reading reading)
    {
        var number = Math.Abs(reading.Value).ToString("0.###", CultureInfo.InvariantCulture);
        return (reading.Value < 0 ? "minus " + number : number) + SpokenSymbol(reading.Unit);
    }

    /// <summary>The unit a hearer expects for an amount of that size.</summary>
    public static UnitOfMeasure UnitFor(Amount amount, UnitSystem units)
    {
        var (value, us) = (amount.Canonical, units == UnitSystem.Us);
        return amount.Dimension switch
        {
            // Half a tenth of a psi below the atmosphere still rounds to zero on a gauge.
            Dimension.Pressure => us ? (value < -0.35 ? UnitOfMeasure.InchesOfMercuryVacuum : UnitOfMeasure.Psig) : UnitOfMeasure.Bar,
            Dimension.Temperature => us ? UnitOfMeasure.Fahrenheit : UnitOfMeasure.Celsius,
            Dimension.TemperatureDifference => us ? UnitOfMeasure.FahrenheitDifference : UnitOfMeasure.KelvinDifference,
            Dimension.Mass => us
                ? (Math.Abs(value) < UnitOfMeasure.Pound.ToCanonical(1) ? UnitOfMeasure.Ounce : UnitOfMeasure.Pound)
                : (Math.Abs(value) < 1 ? UnitOfMeasure.Gram : UnitOfMeasure.Kilogram),
            Dimension.Vacuum => us ? UnitOfMeasure.Micron : UnitOfMeasure.Pascal,
            Dimension.Current => UnitOfMeasure.Ampere,
            Dimension.Voltage => UnitOfMeasure.Volt,
            Dimension.Length => us ? UnitOfMeasure.Foot : UnitOfMeasure.Meter,
            Dimension.Volume => us ? UnitOfMeasure.CubicFoot : UnitOfMeasure.Liter,
            Dimension.Time => TimeUnit(Math.Abs(value)),
            Dimension.Ratio => UnitOfMeasure.Fraction,
            _ => throw new ArgumentOutOfRangeException(nameof(amount), amount.Dimension, "A dimension without a unit to say it in."),
        };
    }

    /// <summary>The unit behind a number, with the space before it; nothing for a pure number.</summary>
    public static string WrittenSymbol(UnitOfMeasure unit) => unit.Symbol switch
    {
        "degF" => " °F",
        "degC" => " °C",
        "1" => "",
        var symbol => " " + symbol,
    };

    private static UnitOfMeasure TimeUnit(double seconds) => seconds switch
    {
        < 120 => UnitOfMeasure.Second,
        < 7200 => UnitOfMeasure.Minute,
        < 172_800 => UnitOfMeasure.Hour,
        _ => UnitOfMeasure.Day,
    };

    // The digits a gauge, a thermometer or a scale of the trade can show, and no more.
    private static string Number(double value, UnitOfMeasure unit)
    {
        var size = Math.Abs(value);
        var format = unit.Symbol switch
        {
            "bar" => size < 2 ? "0.00" : "0.0",
            "kg" => size < 10 ? "0.##" : "0.#",
            "lb" or "oz" or "A" or "l" or "inHg vacuum" => "0.#",
            "ft3" => size < 1 ? "0.###" : size < 10 ? "0.##" : "0.#",
            "1" => size < 1 ? "0.##" : "0.#",
            "psig" => size < 10 ? "0.#" : "0",
            "degF" when unit.Dimension == Dimension.TemperatureDifference => size < 10 ? "0.#" : "0",
            "degC" or "K" => size < 20 ? "0.#" : "0",
            "h" or "d" => "0.#",
            _ => "0",
        };

        var text = value.ToString(format, CultureInfo.InvariantCulture);
        return text.TrimStart('-').All(c => c is '0' or '.') ? text.TrimStart('-') : text;
    }

    private static string SpokenSymbol(UnitOfMeasure unit) => unit.Symbol switch
    {
        "psig" => " P S I",
        "psia" => " P S I absolute",
        "bar" => " bar",
        "bara" => " bar absolute",
        "kPa" => " kilopascals",
        "kPaa" => " kilopascals absolute",
        "MPa" => " megapascals",
        "inHg vacuum" => " inches of vacuum",
        "degF" or "degC" => " degrees",
        "K" => " kelvin",
        "lb" => " pounds",
        "oz" => " ounces",
        "kg" => " kilos",
        "g" => " grams",
        "micron" => " microns",
        "mTorr" => " millitorr",
        "Torr" => " torr",
        "mbar" => " millibars",
        "Pa" => " pascals",
        "A" => " amps",
        "V" => " volts",
        "ft" => " feet",
        "m" => " metres",
        "in" => " inches",
        "mm" => " millimetres",
        "ft3" => " cubic feet",
        "m3" => " cubic metres",
        "l" => " litres",
        "s" => " seconds",
        "min" => " minutes",
        "h" => " hours",
        "d" => " days",
        "%" => " percent",
        _ => "",
    };
}
