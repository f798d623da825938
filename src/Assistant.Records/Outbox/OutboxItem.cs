using Assistant.Dialogue.Replies;

namespace Assistant.Records.Outbox;

/// <summary>A reply still to be delivered.</summary>
/// <param name="MessageId">The message it answers.</param>
/// <param name="Attempts">How often delivery was tried already.</param>
public sealed record OutboxItem(long Id, string Channel, string Conversation, string MessageId, Reply Reply, int Attempts);
