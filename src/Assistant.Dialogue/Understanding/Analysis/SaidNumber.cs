using Assistant.Dialogue.Understanding.Units;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>A number of the message with its sign and unit, and why it may not be taken as it stands.</summary>
/// <param name="Value">With its sign.</param>
/// <param name="Units">What its unit can mean; empty where it is bare.</param>
internal sealed record SaidNumber(double Value, IReadOnlyList<UnitWord> Units)
{
    /// <summary>What is open in the number itself, or null.</summary>
    public Clarify? Open { get; init; }

    /// <summary>Written with a comma before three digits: clear at a US site only.</summary>
    public bool Comma { get; init; }

    /// <summary>"100 and 17", which two pressures can also be told as.</summary>
    public bool Joined { get; init; }

    /// <summary>"1.5k": thousands, unless it is kelvin.</summary>
    public bool Kilo { get; init; }

    /// <summary>"two pounds six": ounces without the word, for a mass only.</summary>
    public bool BareOunces { get; init; }

    /// <summary>"thirty over ambient": a split, and a bound for anything else.</summary>
    public bool OverAmbient { get; init; }

    /// <summary>"should be 22", "22 last time": no reading of now, but good for a setting or a plate.</summary>
    public bool NotNow { get; init; }

    /// <summary>"six pounds left": of the contents or of the whole cylinder is not said.</summary>
    public bool Contents { get; init; }

    /// <summary>Whether it may count something that is no reading, by the strangers around it.</summary>
    public bool AmongStrangers { get; init; }

    /// <summary>"22 to 40": a span, of a needle that swings or of what is not read exactly.</summary>
    public bool IsSpan { get; init; }

    public bool IsBare
    {
        get
        {
            foreach (var unit in Units)
            {
                if (!unit.Everyday)
                {
                    return false;
                }
            }

            return true;
        }
    }
}
