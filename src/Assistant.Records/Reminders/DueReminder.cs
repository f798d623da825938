using System.Collections.Immutable;
using Assistant.Dialogue.Visits;

namespace Assistant.Records.Reminders;

/// <summary>A reminder whose time has come.</summary>
/// <param name="EventNumber">The event that set it.</param>
/// <param name="By">Who set it.</param>
/// <param name="CheckIn">The question whether a person who works alone is well, or null.</param>
/// <param name="Conversations">Where the visit is being talked about now.</param>
public sealed record DueReminder(string VisitId, int EventNumber, DateTimeOffset Due, string By, string About, CheckInExpected? CheckIn, ImmutableArray<ConversationAddress> Conversations)
{
    /// <summary>For so long the other channels leave it to the one its person used last: a page may be shut, a phone without signal.</summary>
    public static readonly TimeSpan Precedence = TimeSpan.FromMinutes(2);

    /// <summary>True where it was given.</summary>
    public bool IsDone { get; init; }

    /// <summary>True where its person, or who came in their place, was last heard on another channel of the visit, and that one still has its time to give it.</summary>
    public bool IsLeftToAnother(VisitState visit, string channel, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return !IsAlert(now) && now < Due + Precedence && visit.Channels.GetValueOrDefault(visit.Crew.Successor(By)) is { } last && last != channel && Conversations.Any(c => c.Channel == last);
    }

    /// <summary>True where the question was asked, or could not be, and nobody has said a word since.</summary>
    public bool IsAlert(DateTimeOffset now) => CheckIn is { } expected && (Due >= expected.Alert || now >= expected.Alert);
}

/// <summary>A conversation by its channel and the channel's own name for it.</summary>
public sealed record ConversationAddress(string Channel, string Conversation);
