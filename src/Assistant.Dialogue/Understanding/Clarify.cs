namespace Assistant.Dialogue.Understanding;

/// <summary>What a message leaves open.</summary>
public enum Clarify
{
    /// <summary>The number stands, its unit does not.</summary>
    Unit,

    /// <summary>It is not said what was read.</summary>
    Fact,

    /// <summary>The number itself is open, cut off or impossible.</summary>
    Value,

    /// <summary>Above or below zero is not said.</summary>
    Sign,
}
