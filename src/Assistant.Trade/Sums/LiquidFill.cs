using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using UnitsNet;

namespace Assistant.Trade.Sums;

/// <summary>How much refrigerant a vessel may hold: four fifths of its volume as liquid, so that it is never full when it warms.</summary>
public static class LiquidFill
{
    /// <summary>Greatest share of the volume that may be liquid. Source: 40 CFR 82, AHRI Guideline K (from memory).</summary>
    public const double Limit = 0.8;

    /// <summary>The temperature a cylinder's limit is reckoned at where nothing warmer is known: 77 degF. Common practice.</summary>
    public static CelsiusTemperature Reference { get; } = new(25);

    /// <summary>0.8 * V * rho_liquid at the warmer of 25 degC and <paramref name="warmest"/>; null outside the refrigerant's table.</summary>
    public static Mass? MostIn(Volume vessel, Refrigerant refrigerant, CelsiusTemperature warmest)
    {
        var reckoned = warmest > Reference ? warmest : Reference;
        return refrigerant.Saturation.Temperatures.Contains(reckoned)
            ? refrigerant.Saturation.LiquidDensity(reckoned) * vessel * Limit
            : null;
    }

    /// <summary>The volume of a cylinder whose collar gives the mass of water it holds (water at 4 degC, 1000 kg/m3).</summary>
    public static Volume VolumeOfWater(Mass waterCapacity) => Volume.FromLiters(waterCapacity.Kilograms);
}
