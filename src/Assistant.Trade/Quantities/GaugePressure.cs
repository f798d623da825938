using UnitsNet;

namespace Assistant.Trade.Quantities;

/// <summary>A pressure counted from the surrounding air, in Pa; a vacuum is negative.</summary>
public readonly record struct GaugePressure(double Pascals)
{
    public Pressure ToPressure() => Pressure.FromPascals(Pascals);

    /// <summary>The absolute pressure at a place with this barometric pressure.</summary>
    public AbsolutePressure ToAbsolute(AbsolutePressure barometer) => new(Pascals + barometer.Pascals);
}
