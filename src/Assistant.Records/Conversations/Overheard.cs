using System.Collections.Frozen;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;

namespace Assistant.Records.Conversations;

/// <summary>What people in a room say among themselves and the assistant hears: which of it is theirs alone.</summary>
internal static class Overheard
{
    // What is said where a message was not understood, or no longer belongs to the visit.
    private static readonly FrozenSet<string> NotOurs = FrozenSet.Create(StringComparer.Ordinal, "unknown.text", "unanswered.question", "command.closed");

    public static bool IsTheirs(Turn turn) => turn.Reply.Parts.Any(p => NotOurs.Contains(p.Key)) || IsNotMadeOut(turn);

    // Taken for an answer to what is open, and nothing of it made out.
    private static bool IsNotMadeOut(Turn turn) =>
        turn.Events.Any(e => e is ClarificationAsked { Heard: null }) && turn.Events.All(e => e is MessageHeard or ClarificationAsked or PersonJoined or CheckInExpected);

    /// <summary>True where one who works alone was asked whether they are well: whatever they say, they said something.</summary>
    public static bool IsSignOfLife(Turn turn) => turn.Events.Any(e => e is CheckInExpected);
}
