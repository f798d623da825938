using Assistant.Trade.Quantities;

namespace Assistant.Trade.Sums;

/// <summary>The setpoints that suit what is stored. Common practice; the owner's food safety plan and the goods' own sheet go before it.</summary>
/// <param name="Low">The coldest usual setpoint.</param>
/// <param name="High">The warmest usual setpoint.</param>
public sealed record StoredGoods(string Name, CelsiusTemperature Low, CelsiusTemperature High)
{
    private static readonly StoredGoods[] All =
    [
        new("chilled-food", Fahrenheit(34), Fahrenheit(38)),
        new("produce", Fahrenheit(34), Fahrenheit(41)),
        new("flowers", Fahrenheit(33), Fahrenheit(39)),
        new("frozen-food", Fahrenheit(-10), Fahrenheit(0)),
        new("ice-cream", Fahrenheit(-20), Fahrenheit(-10)),
    ];

    /// <summary>Cold food is kept at or below this, 41 degF / 5 degC. Source: FDA Food Code 3-501.16.</summary>
    public static CelsiusTemperature ColdFood { get; } = new(5);

    /// <summary>Frozen goods above this soften: 10 degF, -12 degC. Common practice.</summary>
    public static CelsiusTemperature Softens { get; } = Fahrenheit(10);

    /// <summary>A usual differential, 2 to 4 degF. Common practice.</summary>
    public static (TemperatureDifference Low, TemperatureDifference High) UsualDifferential { get; } =
        (TemperatureDifference.FromFahrenheitDegrees(2), TemperatureDifference.FromFahrenheitDegrees(4));

    /// <summary>The goods of that name, or null.</summary>
    public static StoredGoods? Find(string? name) => Array.Find(All, g => g.Name == name);

    private static CelsiusTemperature Fahrenheit(double degrees) => new((degrees - 32) * 5 / 9);
}
