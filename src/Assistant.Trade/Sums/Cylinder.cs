using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using UnitsNet;

namespace Assistant.Trade.Sums;

/// <summary>A refrigerant cylinder on the scale.</summary>
public static class Cylinder
{
    /// <summary>Gross - tare. Negative where the two readings cannot belong together.</summary>
    public static Mass Net(Mass gross, Mass tare) => gross - tare;

    /// <summary>Bubble pressure at the cylinder's temperature while there is liquid in it; null outside the refrigerant's table.</summary>
    public static AbsolutePressure? Pressure(Refrigerant refrigerant, CelsiusTemperature cylinder) =>
        refrigerant.Saturation.TryBubblePressure(cylinder, out var pressure) ? pressure : null;

    /// <summary>A cylinder feeds only while its pressure is above the system's: a cold one that "is empty" is weighed first.</summary>
    public static bool Feeds(AbsolutePressure cylinder, AbsolutePressure system) => cylinder > system;
}
