namespace Assistant.Dialogue.Understanding.Numbers;

/// <summary>A number as it stands in the message, before its sign and unit are looked for.</summary>
/// <param name="End">The first token after it.</param>
/// <param name="Open">Why it cannot be taken as it stands, if it cannot.</param>
internal readonly record struct HeardNumber(double Value, int Start, int End, NumberOpen Open = NumberOpen.No, bool InDigits = false)
{
    public bool Found => End > Start;
}

internal enum NumberOpen
{
    No,

    /// <summary>Cut off, malformed, or two numbers run together.</summary>
    Value,

    /// <summary>Written with a comma before three digits: clear at a US site only.</summary>
    Comma,

    /// <summary>"100 and 17": one number, unless two pressures are being told.</summary>
    Joined,
}
