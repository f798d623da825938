namespace Assistant.Records.Storage.Rows;

/// <summary>A message as a channel's gateway brought it, stored before it is answered for.</summary>
public sealed class InboxRow
{
    public long Id { get; init; }

    public required string Channel { get; init; }

    /// <summary>The gateway's own id of the message: the same id again is the same message.</summary>
    public required string MessageId { get; init; }

    public required string Conversation { get; init; }

    /// <summary>The words; empty once the message was handled, and then they stand in the visit's log alone.</summary>
    public required string Text { get; set; }

    /// <summary>When it was sent, by the gateway's time.</summary>
    public required DateTimeOffset SentAt { get; init; }

    public required DateTimeOffset ReceivedAt { get; init; }

    /// <summary>Sender, time and words in one: a network that brings a message twice under two ids is found out by it.</summary>
    public required string Digest { get; init; }

    public DateTimeOffset? HandledAt { get; set; }
}
