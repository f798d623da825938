using Assistant.App.Hosting;
using Assistant.Records.Assets;

namespace Assistant.App.Web;

/// <summary>The equipment on record: search, one unit with its visits, and the label that starts from it.</summary>
internal static class UnitEndpoints
{
    public static void MapUnits(this WebApplication app)
    {
        app.MapGet("/api/search", SearchAsync);
        app.MapGet("/api/units/{id}", ShowAsync);
        app.MapGet("/units/{id}/label", LabelAsync);
        app.MapGet("/visits/{id}/link.svg", LinkAsync);
    }

    private static async Task<SearchView> SearchAsync(string? q, CallRoom room, CancellationToken cancellation)
    {
        var words = RequestRules.Line("q", q, RequestRules.LongestSite);
        var search = new RecordSearch(room.Log.Database);
        return new(
            [.. (await search.AssetsAsync(words, cancellation)).Select(a => new AssetView(a.Id, a.Site, a.Unit))],
            [.. (await search.VisitsAsync(VisitEndpoints.Channel, words, cancellation)).Select(Visit)]);
    }

    private static async Task<UnitView> ShowAsync(string id, CallRoom room, CancellationToken cancellation)
    {
        var asset = await AssetAsync(id, room, cancellation);
        var phrases = room.Dialogue.Phrases;
        return new(
            asset.Id,
            asset.Site,
            asset.Unit,
            [.. asset.Details.Select(d => new DetailView(phrases.Word(d.Key).Replace('_', ' '), phrases.Word(d.Value)))],
            [.. (await new RecordSearch(room.Log.Database).VisitsToAsync(VisitEndpoints.Channel, asset.Id, cancellation)).Select(Visit)]);
    }

    private static async Task<IResult> LabelAsync(string id, CallRoom room, HttpContext context, CancellationToken cancellation)
    {
        var asset = await AssetAsync(id, room, cancellation);
        context.Response.Headers.ContentSecurityPolicy = PageGuards.ReportPolicy;
        return TypedResults.Text(UnitLabel.Page(asset, $"{Origin(context.Request)}/?unit={Uri.EscapeDataString(asset.Id)}"), "text/html", System.Text.Encoding.UTF8);
    }

    private static async Task<IResult> LinkAsync(string id, CallRoom room, HttpRequest request, CancellationToken cancellation)
    {
        await room.VisitAsync(id, cancellation);
        return TypedResults.Text(UnitLabel.Code($"{Origin(request)}/?visit={id}"), "image/svg+xml", System.Text.Encoding.UTF8);
    }

    private static async Task<Asset> AssetAsync(string id, CallRoom room, CancellationToken cancellation) =>
        await room.Assets.FindAsync(RequestRules.Line("unit", id, 64), cancellation)
            ?? throw new RequestRefused("There is no such unit on record. Search for it by its site, or begin a new visit.", StatusCodes.Status404NotFound);

    private static FoundVisitView Visit(FoundVisit visit) => new(visit.Conversation, visit.Site, visit.OpenedAt, visit.ClosedAt);

    private static string Origin(HttpRequest request) => $"{request.Scheme}://{request.Host}";
}

/// <summary>What a search found.</summary>
public sealed record SearchView(IReadOnlyList<AssetView> Units, IReadOnlyList<FoundVisitView> Visits);

/// <param name="ClosedAt">Null while it is open.</param>
public sealed record FoundVisitView(string Id, string Site, DateTimeOffset OpenedAt, DateTimeOffset? ClosedAt);

/// <summary>A piece of equipment with what is known of it and the visits to it, the newest first.</summary>
public sealed record UnitView(string Id, string Site, string Unit, IReadOnlyList<DetailView> Details, IReadOnlyList<FoundVisitView> Visits);

public sealed record DetailView(string Name, string Value);
