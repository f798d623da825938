using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Trade.Ledgers;

/// <summary>How much liquid a cylinder may hold.</summary>
public static class FillLimit
{
    /// <summary>Density of water by which a water capacity becomes a volume, kg/m3; the round figure errs to the safe side by 0.1 to 0.3 %.</summary>
    private const double WaterDensity = 1000;

    // A thousandth of a gram, so that a product that is a whole gram but for its last digits is that gram.
    private const double RoundingError = 1e-3;

    /// <summary>
    /// The most a cylinder may hold: 0.8 · water capacity · (liquid density / density of water), rounded down to the gram.
    /// Source: 40 CFR 82 and AHRI Guideline K, from memory; by <see cref="LiquidFill.Limit"/>.
    /// </summary>
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

        return new Grams((long)Math.Floor((LiquidFill.Limit * waterCapacity.Value * (density / WaterDensity)) + RoundingError));
    }
}
