using Assistant.Trade.Quantities;

namespace Assistant.Trade.Sums;

/// <summary>The vapour pressure of water. Source: Murphy and Koop 2005, Q. J. R. Meteorol. Soc. 131, 1539, equations 7 and 10.</summary>
public static class WaterVapour
{
    private const double FreezingKelvins = 273.15;

    /// <summary>Over ice, Pa absolute; valid above 110 K up to the triple point.</summary>
    public static AbsolutePressure OverIce(CelsiusTemperature temperature)
    {
        var t = temperature.Kelvins;
        return new(Math.Exp(9.550426 - (5723.265 / t) + (3.53068 * Math.Log(t)) - (0.00728332 * t)));
    }

    /// <summary>Over liquid water, also supercooled, Pa absolute; valid from 123 to 332 K.</summary>
    public static AbsolutePressure OverLiquid(CelsiusTemperature temperature)
    {
        var t = temperature.Kelvins;
        var log = Math.Log(t);
        return new(Math.Exp(
            54.842763 - (6763.22 / t) - (4.210 * log) + (0.000367 * t)
            + (Math.Tanh(0.0415 * (t - 218.8)) * (53.878 - (1331.22 / t) - (9.44523 * log) + (0.014025 * t)))));
    }

    /// <summary>Over what lies there at that temperature: ice below freezing, liquid above.</summary>
    public static AbsolutePressure At(CelsiusTemperature temperature) =>
        temperature.Kelvins < FreezingKelvins ? OverIce(temperature) : OverLiquid(temperature);
}
