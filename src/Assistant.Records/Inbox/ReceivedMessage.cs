namespace Assistant.Records.Inbox;

/// <summary>A message as a gateway brought it.</summary>
/// <param name="SentAt">When it was sent, by the gateway's time.</param>
public sealed record ReceivedMessage(string Channel, string MessageId, string Conversation, string Text, DateTimeOffset SentAt, DateTimeOffset ReceivedAt);
