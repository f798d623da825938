namespace Assistant.Trade.Regulations;

/// <summary>How far the figures of a rule can be trusted.</summary>
public enum SourceBasis
{
    /// <summary>Taken from a published text.</summary>
    Published,

    /// <summary>Recalled: to be checked against the text before anything rests on it.</summary>
    FromMemory,
}
