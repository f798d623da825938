namespace Assistant.Trade.Rules.Evidence;

/// <summary>What the technician's instruments may be off by. Common practice for a field gauge set and a clamp or probe thermometer.</summary>
internal static class Instruments
{
    /// <summary>1 psi, in Pa.</summary>
    public const double PressurePascals = 6895;

    /// <summary>1 degF, in K.</summary>
    public const double TemperatureKelvins = 1 / 1.8;

    /// <summary>Two thermometers, each 1 degF off the other way, in K.</summary>
    public const double TwoThermometersKelvins = 2 / 1.8;
}
