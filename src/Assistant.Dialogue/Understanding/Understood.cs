using System.Collections.Immutable;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding;

/// <summary>What one message says. What it leaves open is in <see cref="Clarify"/>, never guessed.</summary>
/// <param name="Command">One of the contract's commands where the whole message is one, otherwise null.</param>
/// <param name="Question">One of the contract's questions, otherwise null.</param>
/// <param name="Clarify">What must be asked back before the rest of the message can be taken, or null.</param>
/// <param name="Arguments">The numbers and names inside a question; empty otherwise.</param>
public sealed record Understood(
    Intent Intent,
    string? Command,
    string? Question,
    ImmutableArray<Reading> Readings,
    ImmutableArray<Observation> Observations,
    Clarify? Clarify,
    QuestionArguments Arguments)
{
    /// <summary>The walk that the command "begin" names, otherwise null.</summary>
    public string? Walk { get; init; }

    /// <summary>What stands in the message beside what was taken, as it was written: a number that nothing names, in a list an unknown word.</summary>
    public ImmutableArray<string> Unheard { get; init; } = [];

    /// <summary>What the command "remind" wants done later, otherwise null.</summary>
    public Reminding? Reminding { get; init; }

    /// <summary>What is said of a refrigerant cylinder besides, or null. It counts where the visit speaks of cylinders.</summary>
    public CylinderTold? Cylinder { get; init; }

    /// <summary>Where the command "leak" says that a leak was found, otherwise null.</summary>
    public string? Leak { get; init; }

    /// <summary>What the commands "ask-for" and "never-mind" name, otherwise null.</summary>
    public RequestSaid? Requested { get; init; }

    /// <summary>That it puts right what an earlier message said, or null. Whether it does is the dialogue's to see, which knows what that was.</summary>
    public Correcting? Correcting { get; init; }

    /// <summary>Where the value is open because the number can not be, the reading it would make; otherwise null.</summary>
    public Reading? Impossible { get; init; }

    /// <summary>Where the unit is what is open, what was read; otherwise null.</summary>
    public Fact? OpenUnit { get; init; }

    /// <summary>Where a span was told for a number ("22 to 40"), what was read; otherwise null.</summary>
    public Fact? OpenSpan { get; init; }

    /// <summary>True for a question that is none of those known: what it asks is not understood, but that it asks is.</summary>
    public bool IsQuestion { get; init; }

    public static Understood Unknown { get; } = new(Intent.Unknown, null, null, [], [], null, QuestionArguments.None);
}
