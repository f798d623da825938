using UnitsNet;

namespace Assistant.Trade.Quantities;

/// <summary>A point on the Celsius scale, in degC. Differences are <see cref="TemperatureDifference"/>.</summary>
public readonly record struct CelsiusTemperature(double Degrees) : IComparable<CelsiusTemperature>
{
    public double Kelvins => Degrees + 273.15;

    public Temperature ToTemperature() => Temperature.FromDegreesCelsius(Degrees);

    public int CompareTo(CelsiusTemperature other) => Degrees.CompareTo(other.Degrees);

    public static TemperatureDifference operator -(CelsiusTemperature left, CelsiusTemperature right) => new(left.Degrees - right.Degrees);
    public static CelsiusTemperature operator +(CelsiusTemperature left, TemperatureDifference right) => new(left.Degrees + right.Kelvins);
    public static CelsiusTemperature operator -(CelsiusTemperature left, TemperatureDifference right) => new(left.Degrees - right.Kelvins);
    public static bool operator <(CelsiusTemperature left, CelsiusTemperature right) => left.Degrees < right.Degrees;
    public static bool operator >(CelsiusTemperature left, CelsiusTemperature right) => left.Degrees > right.Degrees;
    public static bool operator <=(CelsiusTemperature left, CelsiusTemperature right) => left.Degrees <= right.Degrees;
    public static bool operator >=(CelsiusTemperature left, CelsiusTemperature right) => left.Degrees >= right.Degrees;

    public static TemperatureDifference Subtract(CelsiusTemperature left, CelsiusTemperature right) => left - right;
    public static CelsiusTemperature Add(CelsiusTemperature left, TemperatureDifference right) => left + right;
}
