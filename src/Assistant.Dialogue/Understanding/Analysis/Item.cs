using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>A stretch of the message with all that it can mean: a number, names of facts, observed words, small words.</summary>
/// <param name="Start">The first token.</param>
/// <param name="End">The token after the last.</param>
internal sealed record Item(int Start, int End)
{
    public SaidNumber? Number { get; init; }

    public IReadOnlyList<FactName> Facts { get; init; } = [];

    public IReadOnlyList<ValueWord> Values { get; init; } = [];

    public IReadOnlyList<CountWord> Counts { get; init; } = [];

    public bool? YesNo { get; init; }

    public Cue Cues { get; init; }

    /// <summary>The refrigerant meant; its value is open where the number has several.</summary>
    public NamedRefrigerant? Refrigerant { get; init; }

    /// <summary>"at the coil": which fact this turns into which.</summary>
    public IReadOnlyDictionary<Fact, Fact>? Place { get; init; }

    /// <summary>A number in a unit that makes no reading here, such as volts, but may tell a yes or no.</summary>
    public SaidNumber? Aside { get; init; }

    /// <summary>True for such a number where it may be a reading for all that is known: it is named and not passed over in silence.</summary>
    public bool IsPassedOver { get; init; }

    /// <summary>"about", "around": drops out before a number.</summary>
    public bool IsFiller { get; init; }

    public ItemMark Mark { get; init; }

    public bool Has(Cue cue) => (Cues & cue) != 0;

    public bool IsBreak => Mark is ItemMark.Pause or ItemMark.Stop;

    public bool NamesQuantity
    {
        get
        {
            foreach (var name in Facts)
            {
                if (name.Fact.IsQuantity)
                {
                    return true;
                }
            }

            return false;
        }
    }

    /// <summary>Nothing but an everyday word.</summary>
    public bool IsPlain => Mark == ItemMark.Plain;
}

internal enum ItemMark
{
    None,
    Plain,

    /// <summary>A word of the lexicon that means nothing here.</summary>
    Other,

    /// <summary>A word the lexicon does not know.</summary>
    Stranger,
    Pause,
    Stop,

    /// <summary>"and": parts two things that are told.</summary>
    And,
    Slash,

    /// <summary>A time of day or a phone number.</summary>
    Clock,

    /// <summary>A number that is no reading; no name reaches over it.</summary>
    Stray,

    /// <summary>A number that the message itself takes back.</summary>
    Taken,
}

/// <summary>A refrigerant as it was named.</summary>
/// <param name="Designation">Null where the number alone does not tell which ("407").</param>
/// <param name="Sure">Said so that nothing else can be meant; otherwise only where a refrigerant was asked.</param>
internal sealed record NamedRefrigerant(string? Designation, bool Sure);
