namespace Assistant.Records.Storage.Rows;

/// <summary>One visit: where it was, and the head of its log. Everything else about it is the fold of its events.</summary>
public sealed class VisitRow
{
    public required string Id { get; init; }

    public required string Site { get; init; }

    public string? AssetId { get; init; }

    public required DateTimeOffset OpenedAt { get; init; }

    /// <summary>When it was closed, or null while it is open.</summary>
    public DateTimeOffset? ClosedAt { get; set; }

    /// <summary>The number of its last event: the version an append is checked against.</summary>
    public int Version { get; set; }

    /// <summary>The hash of its last event; of the visit's id alone before the first.</summary>
    public required byte[] HeadHash { get; set; }
}
