using UnitsNet;
using UnitsNet.Units;

namespace Assistant.Trade.Quantities;

/// <summary>
/// A unit as people of the trade say it, with the affine map to the canonical unit of its dimension
/// (canonical = value * scale + offset). The factors come from UnitsNet.
/// </summary>
public sealed class UnitOfMeasure
{
    /// <summary>The standard atmosphere, 101.325 kPa, by which an absolute reading becomes gauge where no altitude is known.</summary>
    public const double StandardAtmosphereKilopascals = 101.325;

    private readonly double scale;
    private readonly double offset;

    private UnitOfMeasure(string symbol, Dimension dimension, double scale, double offset = 0, bool absolute = false)
    {
        Symbol = symbol;
        Dimension = dimension;
        IsAbsolutePressure = absolute;
        this.scale = scale;
        this.offset = offset;
    }

    public static UnitOfMeasure Psig { get; } = new("psig", Dimension.Pressure, Kilopascals(PressureUnit.PoundForcePerSquareInch));
    public static UnitOfMeasure Psia { get; } = new("psia", Dimension.Pressure, Kilopascals(PressureUnit.PoundForcePerSquareInch), -StandardAtmosphereKilopascals, absolute: true);
    public static UnitOfMeasure Bar { get; } = new("bar", Dimension.Pressure, Kilopascals(PressureUnit.Bar));
    public static UnitOfMeasure BarAbsolute { get; } = new("bara", Dimension.Pressure, Kilopascals(PressureUnit.Bar), -StandardAtmosphereKilopascals, absolute: true);
    public static UnitOfMeasure Kilopascal { get; } = new("kPa", Dimension.Pressure, 1);
    public static UnitOfMeasure KilopascalAbsolute { get; } = new("kPaa", Dimension.Pressure, 1, -StandardAtmosphereKilopascals, absolute: true);
    public static UnitOfMeasure Megapascal { get; } = new("MPa", Dimension.Pressure, Kilopascals(PressureUnit.Megapascal));

    /// <summary>Inches of mercury below the atmosphere: a positive value is a negative gauge pressure.</summary>
    public static UnitOfMeasure InchesOfMercuryVacuum { get; } = new("inHg vacuum", Dimension.Pressure, -Kilopascals(PressureUnit.InchOfMercury));

    public static UnitOfMeasure Fahrenheit { get; } = new("degF", Dimension.Temperature, 5.0 / 9.0, -160.0 / 9.0);
    public static UnitOfMeasure Celsius { get; } = new("degC", Dimension.Temperature, 1);

    public static UnitOfMeasure FahrenheitDifference { get; } = new("degF", Dimension.TemperatureDifference, 5.0 / 9.0);
    public static UnitOfMeasure KelvinDifference { get; } = new("K", Dimension.TemperatureDifference, 1);

    public static UnitOfMeasure Pound { get; } = new("lb", Dimension.Mass, UnitsNet.Mass.FromPounds(1).Kilograms);
    public static UnitOfMeasure Ounce { get; } = new("oz", Dimension.Mass, UnitsNet.Mass.FromOunces(1).Kilograms);
    public static UnitOfMeasure Kilogram { get; } = new("kg", Dimension.Mass, 1);
    public static UnitOfMeasure Gram { get; } = new("g", Dimension.Mass, 0.001);

    public static UnitOfMeasure Micron { get; } = new("micron", Dimension.Vacuum, Kilopascals(PressureUnit.Torr));
    public static UnitOfMeasure Millitorr { get; } = new("mTorr", Dimension.Vacuum, Kilopascals(PressureUnit.Torr));
    public static UnitOfMeasure Torr { get; } = new("Torr", Dimension.Vacuum, Kilopascals(PressureUnit.Torr) * 1000);
    public static UnitOfMeasure Millibar { get; } = new("mbar", Dimension.Vacuum, 100);
    public static UnitOfMeasure Pascal { get; } = new("Pa", Dimension.Vacuum, 1);

    public static UnitOfMeasure Ampere { get; } = new("A", Dimension.Current, 1);
    public static UnitOfMeasure Volt { get; } = new("V", Dimension.Voltage, 1);

    public static UnitOfMeasure Foot { get; } = new("ft", Dimension.Length, UnitsNet.Length.FromFeet(1).Meters);
    public static UnitOfMeasure Meter { get; } = new("m", Dimension.Length, 1);
    public static UnitOfMeasure Inch { get; } = new("in", Dimension.Length, UnitsNet.Length.FromInches(1).Meters);
    public static UnitOfMeasure Millimeter { get; } = new("mm", Dimension.Length, 0.001);

    public static UnitOfMeasure CubicFoot { get; } = new("ft3", Dimension.Volume, UnitsNet.Volume.FromCubicFeet(1).CubicMeters);
    public static UnitOfMeasure CubicMeter { get; } = new("m3", Dimension.Volume, 1);
    public static UnitOfMeasure Liter { get; } = new("l", Dimension.Volume, 0.001);

    public static UnitOfMeasure Second { get; } = new("s", Dimension.Time, 1);
    public static UnitOfMeasure Minute { get; } = new("min", Dimension.Time, 60);
    public static UnitOfMeasure Hour { get; } = new("h", Dimension.Time, 3600);
    public static UnitOfMeasure Day { get; } = new("d", Dimension.Time, 86400);

    public static UnitOfMeasure Fraction { get; } = new("1", Dimension.Ratio, 1);
    public static UnitOfMeasure Percent { get; } = new("%", Dimension.Ratio, 0.01);

    /// <summary>Every unit; a symbol is unique within its dimension.</summary>
    public static IReadOnlyList<UnitOfMeasure> All { get; } =
    [
        Psig, Psia, Bar, BarAbsolute, Kilopascal, KilopascalAbsolute, Megapascal, InchesOfMercuryVacuum,
        Fahrenheit, Celsius, FahrenheitDifference, KelvinDifference, Pound, Ounce, Kilogram, Gram,
        Micron, Millitorr, Torr, Millibar, Pascal, Ampere, Volt, Foot, Meter, Inch, Millimeter,
        CubicFoot, CubicMeter, Liter, Second, Minute, Hour, Day, Fraction, Percent,
    ];

    /// <summary>The symbol as the contract spells it, such as "inHg vacuum".</summary>
    public string Symbol { get; }

    public Dimension Dimension { get; }

    /// <summary>True for psia, bara and kPaa, which count from a perfect vacuum and not from the atmosphere.</summary>
    public bool IsAbsolutePressure { get; }

    /// <summary>The unit of that dimension with that symbol, or null.</summary>
    public static UnitOfMeasure? Find(string symbol, Dimension dimension) =>
        All.FirstOrDefault(u => u.Dimension == dimension && u.Symbol.Equals(symbol, StringComparison.Ordinal));

    /// <summary>The value in the dimension's canonical unit.</summary>
    public double ToCanonical(double value) => (value * scale) + offset;

    /// <summary>A canonical value said in this unit.</summary>
    public double FromCanonical(double canonical) => (canonical - offset) / scale;

    public override string ToString() => Symbol;

    // A micron is a thousandth of a torr: the torr's kilopascals are the micron's pascals.
    private static double Kilopascals(PressureUnit unit) => new Pressure(1, unit).Kilopascals;
}
