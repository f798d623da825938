using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;

namespace Assistant.Trade.Tests.Sums;

/// <summary>Values as the trade says them.</summary>
internal static class Given
{
    public static CelsiusTemperature Fahrenheit(double degrees) => new((degrees - 32) / 1.8);

    public static TemperatureDifference FahrenheitDegrees(double degrees) => new(degrees / 1.8);

    /// <summary>Absolute, at sea level.</summary>
    public static AbsolutePressure Psig(double pounds) => new((pounds * 6894.757) + 101_325);

    public static double ToPsig(AbsolutePressure pressure) => (pressure.Pascals - 101_325) / 6894.757;

    public static Refrigerant Refrigerant(string designation) => RefrigerantLibrary.Find(designation)!;
}
