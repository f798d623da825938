using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Assets;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Assistant.Trade.Quantities;

namespace Assistant.Records.Conversations;

/// <summary>Makes the first event of a visit, with what the record of the equipment knows.</summary>
internal sealed class VisitOpener(EventLog log, ConversationOptions options)
{
    private readonly AssetStore assets = new(log.Database);

    /// <exception cref="RecordsException">There is no such asset.</exception>
    public async Task<VisitOpened> FirstEventAsync(VisitRequest request, CancellationToken cancellation)
    {
        var asset = request.AssetId is { } id
            ? await assets.FindAsync(id, cancellation) ?? throw new RecordsException(RecordsFault.Refused, $"There is no asset {id} on record. Name one that is, or leave it out.")
            : null;
        var known = asset?.Details.Where(d => AssetFacts.Kept.Contains(d.Key)).ToImmutableDictionary() ?? ImmutableDictionary<string, string>.Empty;
        return new VisitOpened(
            request.Site ?? asset?.Site ?? options.UnnamedSite,
            asset?.Id,
            request.Units == UnitSystem.Metric ? "metric" : "us",
            known) { At = request.At, By = request.Person };
    }

    /// <summary>The visit a message opens by itself. It takes no equipment over from an earlier visit: a wrong nameplate is worse than none.</summary>
    public VisitRequest RequestOf(InboundMessage message) =>
        new(message.Channel, message.Conversation, Site: null, AssetId: null, options.Units, message.Person, message.At);
}
