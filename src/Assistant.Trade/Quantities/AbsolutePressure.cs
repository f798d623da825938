using UnitsNet;

namespace Assistant.Trade.Quantities;

/// <summary>A pressure counted from a perfect vacuum, in Pa. The one form in which the refrigerant tables take a pressure.</summary>
public readonly record struct AbsolutePressure(double Pascals) : IComparable<AbsolutePressure>
{
    /// <summary>The standard atmosphere, 101 325 Pa (ISO 2533).</summary>
    public static AbsolutePressure StandardAtmosphere { get; } = new(101_325);

    public Pressure ToPressure() => Pressure.FromPascals(Pascals);

    /// <summary>What a gauge at a place with this barometric pressure would show.</summary>
    public GaugePressure ToGauge(AbsolutePressure barometer) => new(Pascals - barometer.Pascals);

    public int CompareTo(AbsolutePressure other) => Pascals.CompareTo(other.Pascals);

    public static bool operator <(AbsolutePressure left, AbsolutePressure right) => left.Pascals < right.Pascals;
    public static bool operator >(AbsolutePressure left, AbsolutePressure right) => left.Pascals > right.Pascals;
    public static bool operator <=(AbsolutePressure left, AbsolutePressure right) => left.Pascals <= right.Pascals;
    public static bool operator >=(AbsolutePressure left, AbsolutePressure right) => left.Pascals >= right.Pascals;
}
