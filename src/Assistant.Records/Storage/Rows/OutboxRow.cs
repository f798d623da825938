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
    public required string Reply { get; set; }

    /// <summary>Not to be tried before this time.</summary>
    public required DateTimeOffset Due { get; set; }

    public int Attempts { get; set; }

    /// <summary>When an attempt began whose end is not known; null where none is under way.</summary>
    public DateTimeOffset? TriedAt { get; set; }

    /// <summary>When it was given to the channel; null while it was not.</summary>
    public DateTimeOffset? DeliveredAt { get; set; }

    /// <summary>When the channel reported that it arrived, or null.</summary>
    public DateTimeOffset? ReportedAt { get; set; }

    /// <summary>When it was given up, or null.</summary>
    public DateTimeOffset? GaveUpAt { get; set; }

    /// <summary>Why the last attempt failed, in the channel's words, or null.</summary>
    public string? Trouble { get; set; }

    /// <summary>The visit it speaks of, or null where it speaks of none.</summary>
    public string? VisitId { get; set; }

    /// <summary>The visit's version it speaks of: what the reader knows once it was read.</summary>
    public int? Version { get; set; }

    /// <summary>The row whose reply holds this one's: it went out with that one and waits no more. Null where it goes out by itself.</summary>
    public long? PartOf { get; set; }
}
