using UnitsNet;

namespace Assistant.Trade.Ledgers;

/// <summary>How much liquid a cylinder may hold.</summary>
public static class FillLimit
{
    /// <summary>
    /// The largest share of a recovery cylinder's volume that liquid may take, at 25 degC / 77 degF.
    /// Source: 40 CFR 82 and AHRI Guideline K, from memory.
    /// </summary>
    public const double LiquidVolumeShare = 0.8;

    /// <summary>Density of water by which a water capacity becomes a volume, kg/m3; the round figure errs to the safe side by 0.1 to 0.3 %.</summary>
    private const double WaterDensity = 1000;

    /// <summary>The most a cylinder may hold: 0.8 · water capacity · (liquid density / density of water), rounded down to the gram.</summary>
    /// <param name="waterCapacity">Mass of water it would hold.</param>
    /// <param name="liquidDensityAt25C">Density of the saturated liquid at 25 degC / 77 degF.</param>
    /// <exception cref="ArgumentOutOfRangeException">Either is not positive.</exception>
    public static Grams MaximumContents(Grams waterCapacity, Density liquidDensityAt25C)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(waterCapacity.Value, nameof(waterCapacity));
        var density = liquidDensityAt25C.KilogramsPerCubicMeter;
        if (density <= 0)
        {
            throw new ArgumentOutOfRangeException(nameof(liquidDensityAt25C), density, "a liquid's density is a positive number of kg/m3");
        }

        return new Grams((long)Math.Floor(LiquidVolumeShare * waterCapacity.Value * (density / WaterDensity)));
    }
}
