using Assistant.Dialogue.Visits;

namespace Assistant.Records.Storage.Rows;

/// <summary>One person of a firm. The name is what the log calls them by; it goes when they are erased.</summary>
public sealed class PersonRow
{
    public required string Id { get; init; }

    public required string FirmId { get; init; }

    [Personal]
    public required string Name { get; set; }

    /// <summary>The name folded, so that no two people are called the same.</summary>
    [Personal]
    public required string NameKey { get; set; }

    /// <summary>What they may be on a visit: a sum of the roles.</summary>
    public required int Roles { get; set; }

    /// <summary>Since when they may not join or speak, or null.</summary>
    public DateTimeOffset? RevokedAt { get; set; }
}
