using Assistant.Trade.Quantities;

namespace Assistant.Trade.Rules.Thresholds;

/// <summary>
/// The plant at rest. The high side stands at the bubble pressure of its coldest liquid: first principles; how closely it has to agree
/// is instrument error, the rest common practice.
/// </summary>
internal static class StandingLimits
{
    /// <summary>High side at rest against the ambient: agrees within 1.8 degF.</summary>
    public static TemperatureDifference Agrees { get; } = new(1);

    /// <summary>Agreement that clears the charge of a foreign gas: within 2.2 degF.</summary>
    public static TemperatureDifference NoGas { get; } = new(1.2);

    /// <summary>Over it by 3.2 degF: a foreign gas.</summary>
    public static TemperatureDifference Gas { get; } = new(1.8);

    /// <summary>Under it by 14 degF: no liquid is left to hold the pressure up; less may be a colder corner. First principles, the figure common practice.</summary>
    public static TemperatureDifference NoLiquidLeft { get; } = new(-8);

    /// <summary>Temperatures level unevenly: 0.5 degF.</summary>
    public static TemperatureDifference LevellingScatter { get; } = new(0.3);

    /// <summary>A running condenser stands over the ambient by 7 degF at least.</summary>
    public static TemperatureDifference RunningOverAmbient { get; } = new(4);

    /// <summary>A resting one stands near the ambient, the sun and the last run counted: within 7 degF.</summary>
    public static TemperatureDifference RestingNearAmbient { get; } = new(4);

    /// <summary>And not over it by 18 degF.</summary>
    public static TemperatureDifference NotRejecting { get; } = new(10);

    /// <summary>Anything from 9 degF under the ambient up tells nothing against a fault of control.</summary>
    public static TemperatureDifference AnyOverAmbient { get; } = new(-5);

    /// <summary>Equalised with a cold coil the high side may stand far under the ambient.</summary>
    public static TemperatureDifference EqualisedUnderAmbient { get; } = new(-60);

    /// <summary>Both sides equal: their saturation temperatures within 5.4 degF.</summary>
    public static TemperatureDifference Equal { get; } = new(3);

    /// <summary>Both sides apart: 3.6 degF at least.</summary>
    public static TemperatureDifference Apart { get; } = new(2);

    /// <summary>Gauges at rest: 1.8 degF.</summary>
    public static TemperatureDifference Scatter { get; } = new(1);

    /// <summary>A pumped-down low side stands 9 degF or more under the room.</summary>
    public static TemperatureDifference PumpedDown { get; } = new(5);

    /// <summary>Nothing let through: 14 degF or more.</summary>
    public static TemperatureDifference NothingLetIn { get; } = new(8);

    /// <summary>Low sides fill up again at different speeds: 2.7 degF.</summary>
    public static TemperatureDifference LowSideScatter { get; } = new(1.5);
}
