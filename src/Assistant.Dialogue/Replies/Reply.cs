using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Assistant.Dialogue.Replies;

/// <summary>
/// One answer of the assistant, before a channel shapes it: verdict or acknowledgement first, then the numbers it rests on,
/// the caution that matters now, and the one next thing. A channel may shorten by taking <see cref="Phrase.Brief"/>
/// and dropping <see cref="Because"/>; it never drops a caution.
/// </summary>
/// <param name="Say">What is said first: the number taken, the verdict, the answer to a question.</param>
/// <param name="Because">The numbers and rules it rests on; may be left out where space is short, given on "why" or "more".</param>
/// <param name="Cautions">The cautions that matter now.</param>
/// <param name="Ask">The one next thing, or null.</param>
/// <param name="Choices">The words that answer <paramref name="Ask"/>, as buttons; empty for a free answer.</param>
/// <param name="AskedFact">The fact now asked for, by its contract name, or null.</param>
/// <param name="Units">The units <paramref name="AskedFact"/> may be answered in, the site's default first; empty where it takes no number.</param>
/// <param name="Walk">Where the walk stands now.</param>
/// <param name="Verdicts">The faults as they stand now, without the ruled-out, best first.</param>
public sealed record Reply(
    Phrase Say,
    ImmutableArray<Phrase> Because,
    ImmutableArray<SpokenCaution> Cautions,
    Phrase? Ask,
    ImmutableArray<string> Choices,
    string? AskedFact,
    ImmutableArray<string> Units,
    WalkPosition? Walk,
    ImmutableArray<Verdict> Verdicts)
{
    /// <summary>What <see cref="Say"/> is made of, in its order, for a channel that puts it in another; empty where it is one piece.</summary>
    public ImmutableArray<SaidPart> Parts { get; init; } = [];

    /// <summary>The facts still wanted at the same place after <see cref="AskedFact"/>, in the walk's order, by their contract names.</summary>
    public ImmutableArray<string> AlsoWanted { get; init; } = [];

    /// <summary>True where the technician asked for all there is to say ("more"): no channel shortens it.</summary>
    public bool IsWhole { get; init; }
}

/// <summary>One sentence of what is said.</summary>
/// <param name="Key">The phrase's key, or empty where it was put together otherwise.</param>
/// <param name="Fact">The fact it repeats or speaks of, by its contract name, or null.</param>
public sealed record SaidPart(string Key, string? Fact, Phrase Text);

/// <summary>A sentence in its full form and its brief one (text message, and voice where it has no form of its own).</summary>
public sealed record Phrase(string Full, string Brief)
{
    [JsonIgnore]
    public bool IsEmpty => Full.Length == 0;

    /// <summary>The form for the ear, as one says it over a radio; null where the brief one, made for the eye, serves as well.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Spoken { get; init; }

    /// <summary>What a voice says.</summary>
    [JsonIgnore]
    public string Aloud => Spoken ?? Brief;

    public static Phrase Empty { get; } = new("", "");

    /// <summary>Both one after the other.</summary>
    public Phrase Then(Phrase next) => new($"{Full} {next.Full}", $"{Brief} {next.Brief}") { Spoken = Spoken is null && next.Spoken is null ? null : $"{Aloud} {next.Aloud}" };
}

/// <summary>A caution as said this turn; the code in the contract's spelling.</summary>
public sealed record SpokenCaution(string Code, Phrase Text);

/// <summary>Where a walk stands.</summary>
public sealed record WalkPosition(string Walk, string Stop, string Place);

/// <summary>A fault as it stands; code and standing in the contract's spelling.</summary>
public sealed record Verdict(string Code, string Standing);
