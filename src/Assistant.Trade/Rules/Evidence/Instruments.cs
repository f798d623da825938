namespace Assistant.Trade.Rules.Evidence;

/// <summary>What the technician's instruments may be off by. Common practice for a field gauge set and a clamp or probe thermometer.</summary>
internal static class Instruments
{
    /// <summary>1 psi, in Pa.</summary>
    public const double PressurePascals = 6895;

    /// <summary>1 degF, in K.</summary>
    public const double TemperatureKelvins = 1 / 1.8;

    /// <summary>What a clamp meter and a plate leave open in the share of the rated current: 2 %, common practice.</summary>
    public const double CurrentShare = 0.02;

    /// <summary>What two line temperatures leave open in the compression's efficiency: 0.02, common practice.</summary>
    public const double CompressionShare = 0.02;

    /// <summary>A difference said outright rests on two instruments nobody named: two errors.</summary>
    public const double SaidOutrightErrors = 2;
}
