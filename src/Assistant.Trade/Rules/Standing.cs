namespace Assistant.Trade.Rules;

/// <summary>How far a fault is shown by the facts at hand.</summary>
public enum Standing
{
    /// <summary>The discriminating evidence is in and nothing contradicts.</summary>
    Established,
    Likely,
    Possible,
    RuledOut,
}
