namespace Assistant.Records.Storage.Rows;

/// <summary>
/// One event as stored. What is personal stands apart from the rest under a salted digest, and the hash covers the digest:
/// a person's words can be erased and the chain still holds.
/// </summary>
public sealed class EventRow
{
    public required string VisitId { get; init; }

    /// <summary>The place in the visit's log, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>The stored name of the event's kind.</summary>
    public required string Kind { get; init; }

    /// <summary>UTC text, kept as written: what the hash covers.</summary>
    public required string At { get; init; }

    /// <summary>The event as JSON, without what is personal.</summary>
    public required string Body { get; init; }

    /// <summary>Who did it and what they said, as JSON; null once erased.</summary>
    public string? Personal { get; set; }

    /// <summary>What keeps the digest from being guessed; null once erased.</summary>
    public byte[]? Salt { get; set; }

    public required byte[] PersonalDigest { get; init; }

    public required byte[] PrevHash { get; init; }

    public byte[] Hash { get; set; } = [];
}
