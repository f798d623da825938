using Assistant.Trade.Quantities;

namespace Assistant.Trade.Sums;

/// <summary>The barometric pressure at a site.</summary>
public static class Atmosphere
{
    /// <summary>
    /// Barometric pressure in the standard atmosphere, p = 101325 (1 - 2.25577e-5 h)^5.25588 Pa.
    /// Source: ICAO Doc 7488 / ISO 2533, troposphere, -5 to 11 km.
    /// </summary>
    /// <param name="altitudeMeters">Height above sea level, m.</param>
    public static AbsolutePressure BarometricPressure(double altitudeMeters) =>
        new(101_325 * Math.Pow(1 - (2.25577e-5 * altitudeMeters), 5.25588));
}
