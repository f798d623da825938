using UnitsNet;

namespace Assistant.Trade.Quantities;

/// <summary>A difference of two temperatures, in K: superheat, subcooling, split, TD.</summary>
public readonly record struct TemperatureDifference(double Kelvins) : IComparable<TemperatureDifference>
{
    public TemperatureDelta ToTemperatureDelta() => TemperatureDelta.FromKelvins(Kelvins);

    public static TemperatureDifference FromFahrenheitDegrees(double degrees) => new(degrees * 5.0 / 9.0);

    public int CompareTo(TemperatureDifference other) => Kelvins.CompareTo(other.Kelvins);

    public static TemperatureDifference operator -(TemperatureDifference value) => new(-value.Kelvins);
    public static TemperatureDifference operator *(TemperatureDifference left, double factor) => new(left.Kelvins * factor);
    public static bool operator <(TemperatureDifference left, TemperatureDifference right) => left.Kelvins < right.Kelvins;
    public static bool operator >(TemperatureDifference left, TemperatureDifference right) => left.Kelvins > right.Kelvins;
    public static bool operator <=(TemperatureDifference left, TemperatureDifference right) => left.Kelvins <= right.Kelvins;
    public static bool operator >=(TemperatureDifference left, TemperatureDifference right) => left.Kelvins >= right.Kelvins;

    public static TemperatureDifference Negate(TemperatureDifference value) => -value;
    public static TemperatureDifference Multiply(TemperatureDifference left, double factor) => left * factor;
}
