namespace Assistant.Records.Storage.Rows;

/// <summary>A person who is on a visit now, kept in step with the log.</summary>
public sealed class VisitMemberRow
{
    public required string VisitId { get; init; }

    public required string PersonId { get; init; }

    /// <summary>on-site, helping or office.</summary>
    public required string Role { get; set; }

    public required DateTimeOffset Since { get; set; }
}
