using Assistant.Dialogue.Replies;

namespace Assistant.Records.Outbox;

/// <summary>A reply still to be delivered.</summary>
/// <param name="MessageId">The message it answers.</param>
/// <param name="Attempts">How often delivery was tried already.</param>
public sealed record OutboxItem(long Id, string Channel, string Conversation, string MessageId, Reply Reply, int Attempts);

/// <summary>A reply that no message caused.</summary>
/// <param name="Id">Says which it is, such as a reminder's: the same id is put in once.</param>
/// <param name="Seen">What of which visit the reader knows once it was read, or null.</param>
public sealed record UnaskedReply(string Channel, string Conversation, string Id, Reply Reply, DateTimeOffset Due, SeenVisit? Seen = null);

/// <summary>How much of a visit somebody knows: all up to the event of that number.</summary>
public sealed record SeenVisit(string VisitId, int Version);

/// <summary>A reply that was given up.</summary>
/// <param name="Trouble">Why the last attempt failed.</param>
public sealed record LostReply(long Id, string Conversation, string MessageId, DateTimeOffset GaveUpAt, string Trouble);
