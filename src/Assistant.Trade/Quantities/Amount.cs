namespace Assistant.Trade.Quantities;

/// <summary>A number with what it is, in the canonical unit of its dimension: what a reason or a phrase carries until it is said in someone's units.</summary>
public readonly record struct Amount(double Canonical, Dimension Dimension)
{
    public static implicit operator Amount(CelsiusTemperature temperature) => new(temperature.Degrees, Dimension.Temperature);
    public static implicit operator Amount(TemperatureDifference difference) => new(difference.Kelvins, Dimension.TemperatureDifference);
    public static implicit operator Amount(GaugePressure pressure) => new(pressure.Pascals / 1000, Dimension.Pressure);

    public static Amount Ratio(double value) => new(value, Dimension.Ratio);

    public static Amount ToAmount(CelsiusTemperature temperature) => temperature;
}
