namespace Assistant.Trade.Quantities;

/// <summary>What kind of quantity a number is. Each has one canonical unit, named in <see cref="UnitOfMeasure"/>.</summary>
public enum Dimension
{
    /// <summary>Gauge pressure; canonical kPa gauge, vacuum negative.</summary>
    Pressure,

    /// <summary>A point on a temperature scale; canonical degC.</summary>
    Temperature,

    /// <summary>A difference of temperatures; canonical K.</summary>
    TemperatureDifference,

    /// <summary>Canonical kg.</summary>
    Mass,

    /// <summary>Absolute pressure of a vacuum; canonical Pa absolute.</summary>
    Vacuum,

    /// <summary>Canonical A.</summary>
    Current,

    /// <summary>Canonical V.</summary>
    Voltage,

    /// <summary>Canonical m.</summary>
    Length,

    /// <summary>Canonical m3.</summary>
    Volume,

    /// <summary>Canonical s.</summary>
    Time,

    /// <summary>A pure number, such as a ratio or a share; canonical 1.</summary>
    Ratio,
}
