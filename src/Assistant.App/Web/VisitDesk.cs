using System.Collections.Immutable;
using Assistant.App.Demo;
using Assistant.App.Hosting;
using Assistant.Records.Assets;
using Assistant.Records.Conversations;
using Assistant.Trade.Refrigerants;

namespace Assistant.App.Web;

/// <summary>Opens visits from the page: on a unit on record, on a new one, or on the invented one.</summary>
internal sealed class VisitDesk(CallRoom room, DemoVisit demo, TimeProvider clock)
{
    /// <exception cref="RequestRefused">The request can not be served; the message says what is wrong.</exception>
    public async Task<OpenedVisit> OpenAsync(string id, OpenVisitRequest request, CancellationToken cancellation)
    {
        var (asset, units) = request switch
        {
            { Demo: true } => (await RecordAsync(demo.Asset, cancellation), demo.Units),
            { AssetId: { } known } => (RequestRules.Line("assetId", known, 64), RequestRules.Units(request.Units)),
            _ => (await RecordAsync(NewUnit(request), cancellation), RequestRules.Units(request.Units)),
        };
        return await room.Conversations.OpenVisitAsync(
            new(VisitEndpoints.Channel, id, Site: null, asset, units, RequestRules.Person(request.By), clock.GetUtcNow()), cancellation);
    }

    private async Task<string> RecordAsync(Asset asset, CancellationToken cancellation)
    {
        await room.Assets.RecordAsync(asset, clock.GetUtcNow(), cancellation);
        return asset.Id;
    }

    // A new visit begins the unit's record, so that the next one finds it on the first screen.
    private static Asset NewUnit(OpenVisitRequest request)
    {
        RequestRules.Units(request.Units);
        var site = RequestRules.Line("site", request.Site, RequestRules.LongestSite);
        var details = ImmutableSortedDictionary<string, string>.Empty;
        if (!string.IsNullOrWhiteSpace(request.Refrigerant))
        {
            var refrigerant = RefrigerantLibrary.Find(request.Refrigerant.Trim())
                ?? throw new RequestRefused($"refrigerant: {RequestRules.Line("refrigerant", request.Refrigerant, 20)} is in no table here; take one from the list, or leave it empty.");
            details = details.Add("refrigerant", refrigerant.Designation);
        }

        return new(Guid.CreateVersion7().ToString("N"), site, Asset.Unnamed, details);
    }
}
