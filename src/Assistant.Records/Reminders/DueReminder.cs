using System.Collections.Immutable;

namespace Assistant.Records.Reminders;

/// <summary>A reminder whose time has come.</summary>
/// <param name="EventNumber">The event that set it.</param>
/// <param name="Conversations">Where the visit is being talked about now.</param>
public sealed record DueReminder(string VisitId, int EventNumber, DateTimeOffset Due, string About, ImmutableArray<ConversationAddress> Conversations);

/// <summary>A conversation by its channel and the channel's own name for it.</summary>
public sealed record ConversationAddress(string Channel, string Conversation);
