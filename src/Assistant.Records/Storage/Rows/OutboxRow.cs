namespace Assistant.Records.Storage.Rows;

/// <summary>A reply that a channel still has to deliver, stored with the events it answers.</summary>
public sealed class OutboxRow
{
    public long Id { get; init; }

    public required string Channel { get; init; }

    public required string Conversation { get; init; }

    /// <summary>The message it answers, or the reminder it gives: delivered twice, it can be told apart by this.</summary>
    public required string MessageId { get; init; }

    /// <summary>The reply as JSON.</summary>
    public required string Reply { get; init; }

    /// <summary>Not to be tried before this time.</summary>
    public required DateTimeOffset Due { get; set; }

    public int Attempts { get; set; }

    public DateTimeOffset? DeliveredAt { get; set; }
}
