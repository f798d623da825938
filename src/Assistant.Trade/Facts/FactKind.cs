namespace Assistant.Trade.Facts;

/// <summary>What an answer to a fact must be.</summary>
public enum FactKind
{
    Choice,
    YesNo,
    Temperature,
    TemperatureDifference,
    Pressure,

    /// <summary>The setting of a head pressure control, said in degrees (dew) or as a pressure.</summary>
    TemperatureOrPressure,
    Vacuum,
    Mass,
    Current,
    Voltage,
    Length,
    Volume,
    Time,
}
