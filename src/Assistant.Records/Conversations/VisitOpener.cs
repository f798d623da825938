using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Assets;
using Assistant.Records.Cylinders;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Records.Conversations;

/// <summary>Makes the first event of a visit, with what the record of the equipment knows.</summary>
internal sealed class VisitOpener(EventLog log, ConversationOptions options)
{
    private readonly AssetStore assets = new(log.Database);
    private readonly AssetHistoryReader histories = new(log);
    private readonly CylinderBookReader cylinders = new(log);

    /// <exception cref="RecordsException">There is no such asset.</exception>
    public async Task<VisitOpened> FirstEventAsync(VisitRequest request, CancellationToken cancellation)
    {
        var asset = request.AssetId is { } id
            ? await assets.FindAsync(id, cancellation) ?? throw new RecordsException(RecordsFault.Refused, $"There is no asset {id} on record. Name one that is, or leave it out.")
            : null;
        var known = Kept(asset);
        var history = asset is null ? null : await histories.ReadAsync(asset.Id, cancellation: cancellation);
        var used = await cylinders.LastUsedAsync(request.At, cancellation);
        return new VisitOpened(
            request.Site ?? asset?.Site ?? options.UnnamedSite,
            asset?.Id,
            request.Units == UnitSystem.Metric ? "metric" : "us",
            known)
        {
            At = request.At,
            By = request.Person,
            Unit = asset?.Unit is Asset.Unnamed ? null : asset?.Unit,
            Before = history is null ? null : Before(history, request.At),
            Details = asset?.Details.Where(d => !known.ContainsKey(d.Key) && FactCatalogue.Find(d.Key) is null).ToImmutableSortedDictionary() is { IsEmpty: false } details ? details : null,
            Changed = history is null ? null : AssetChanges.Since(history, request.At) is { IsEmpty: false } changed ? changed : null,
            Cylinders = used.IsEmpty ? null : used,
        };
    }

    private static ImmutableDictionary<string, string> Kept(Asset? asset) =>
        asset?.Details.Where(d => AssetFacts.Kept.Contains(d.Key)).ToImmutableDictionary() ?? ImmutableDictionary<string, string>.Empty;

    private static VisitBefore? Before(AssetHistory history, DateTimeOffset at)
    {
        var visits = history.Visits.Where(v => v.OpenedAt <= at).ToList();
        return visits.FirstOrDefault() is not { } last
            ? null
            : new(
                Day(last.OpenedAt),
                last.Verdict?.Fault,
                last.Verdict?.Standing,
                last.Mended,
                [.. last.FollowUps.Select(f => f.Due)],
                [.. visits.SelectMany(v => v.Leaks).OrderBy(l => l.At).Select(l => new EarlierLeak(l.Place, Day(l.At)))]);
    }

    private static DateOnly Day(DateTimeOffset at) => DateOnly.FromDateTime(at.Date);

    /// <summary>The visit a message opens by itself. It takes no equipment over from an earlier visit: a wrong nameplate is worse than none.</summary>
    public VisitRequest RequestOf(InboundMessage message) =>
        new(message.Channel, message.Conversation, Site: null, AssetId: null, options.Units, message.Person, message.At);
}
