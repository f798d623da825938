using Assistant.Records.Signing;
using Assistant.Records.Storage.Rows;

namespace Assistant.Records.Exchange;

/// <summary>What the file of one visit holds beside its pictures.</summary>
/// <param name="Schema"><see cref="Known"/>.</param>
/// <param name="Events">The log as stored, in order.</param>
/// <param name="Pictures">The ids of the pictures in the file; an id is the hash of the content.</param>
/// <param name="Head">The log's length and last hash, signed by the installation that wrote the file.</param>
public sealed record VisitFile(string Schema, ExchangedVisit Visit, ExchangedAsset? Asset, IReadOnlyList<EventRow> Events, IReadOnlyList<string> Pictures, SignedHead Head)
{
    public const string Known = "coldwalk-visit-1";
}

/// <summary>Where the visit was.</summary>
public sealed record ExchangedVisit(string Id, string Site, string? AssetId, DateTimeOffset OpenedAt, DateTimeOffset? ClosedAt);

/// <summary>The equipment as the record knew it.</summary>
public sealed record ExchangedAsset(string Id, string Site, string Unit, IReadOnlyDictionary<string, string> Details);
