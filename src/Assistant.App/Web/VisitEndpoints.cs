using Assistant.App.Demo;
using Assistant.App.Hosting;
using Assistant.Trade.Refrigerants;
using Microsoft.AspNetCore.Http.Metadata;

namespace Assistant.App.Web;

/// <summary>The page's own endpoints for visits and what is said on them.</summary>
internal static class VisitEndpoints
{
    /// <summary>The name under which the page's conversations are kept.</summary>
    public const string Channel = "page";

    private const int LargestBody = 16 * 1024;

    public static void MapVisits(this WebApplication app)
    {
        var api = app.MapGroup("/api").WithMetadata(new BodyLimit(LargestBody));
        api.MapGet("/start", StartAsync);
        api.MapPost("/visits", OpenAsync).RequireRateLimiting(RateLimits.Turns);
        api.MapGet("/visits/{id}", ShowAsync);
        api.MapPost("/visits/{id}/messages", SayAsync).RequireRateLimiting(RateLimits.Turns);
        api.MapPost("/visits/{id}/reminders", RemindAsync);
    }

    /// <summary>The visit under that address.</summary>
    /// <exception cref="RequestRefused">There is none.</exception>
    public static async Task<string> VisitAsync(this CallRoom room, string id, CancellationToken cancellation) =>
        await room.Log.VisitOfAsync(Channel, RequestRules.Id(id), cancellation)
            ?? throw new RequestRefused("There is no visit under this address. Go back to the start and open one.", StatusCodes.Status404NotFound);

    private static async Task<StartView> StartAsync(CallRoom room, DemoVisit demo, HttpContext context, CancellationToken cancellation) => new(
        // Each phone that joined has an address of its own for the visit: it is one visit.
        [.. (await room.Visits.OfChannelAsync(Channel, cancellation)).DistinctBy(v => v.VisitId).Select(v => new OpenVisitView(v.Conversation, v.Site, v.OpenedAt))],
        [.. (await room.Assets.ListAsync(cancellation)).Where(a => a.Id != demo.Id).Take(MostAssets).Select(a => new AssetView(a.Id, a.Site, a.Unit))],
        [.. RefrigerantLibrary.All.Select(r => r.Designation)],
        demo.Notice,
        SignIn.PersonOf(context)?.Name);

    /// <summary>More than this is found by the search, not by reading a list.</summary>
    private const int MostAssets = 12;

    private static async Task<VisitView> OpenAsync(OpenVisitRequest request, CallRoom room, VisitDesk desk, VisitViews views, HttpContext context, CancellationToken cancellation)
    {
        var id = RequestRules.Id(request.Id);
        if (await room.Log.VisitOfAsync(Channel, id, cancellation) is { } open)
        {
            return await views.OpenedAsync(id, open, cancellation);
        }

        var opened = await desk.OpenAsync(id, request with { By = SignIn.NameOf(context, request.By) }, cancellation);
        return await views.AfterAsync(id, opened.VisitId, opened.Reply, cancellation);
    }

    private static async Task<VisitView> ShowAsync(string id, CallRoom room, VisitViews views, CancellationToken cancellation) =>
        await views.OpenedAsync(id, await room.VisitAsync(id, cancellation), cancellation);

    private static async Task<VisitView> SayAsync(string id, SayRequest request, CallRoom room, VisitViews views, TimeProvider clock, HttpContext context, CancellationToken cancellation)
    {
        var messageId = RequestRules.Id(request.Id);
        var text = RequestRules.Line("text", request.Text, RequestRules.LongestText);
        var visit = await room.VisitAsync(id, cancellation);
        if (await room.Log.ReplyToAsync(Channel, messageId, cancellation) is { } before)
        {
            return await views.AfterAsync(id, visit, before, cancellation);
        }

        var state = await room.Conversations.StateOfAsync(visit, cancellation);
        var meant = LateAnswer.Meant(text, request.Answers, state, room.Now(state), room.Dialogue.Phrases);
        var said = RequestRules.SaidAt(clock.GetUtcNow(), request.Ago, state.OpenedAt);
        var reply = await room.HandleAsync(new(messageId, Channel, id, SignIn.NameOf(context, request.By), said, meant), cancellation);
        return await views.AfterAsync(id, visit, reply, cancellation);
    }

    private static async Task<IReadOnlyList<ReplyView>> RemindAsync(string id, RemindRequest? request, CallRoom room, TimeProvider clock, CancellationToken cancellation)
    {
        await room.VisitAsync(id, cancellation);
        var asking = request?.Id is { } named ? RequestRules.Id(named) : null;
        return [.. (await room.Reminders.TakeDueAsync(Channel, id, clock.GetUtcNow(), cancellation, asking)).Select(ReplyView.Of)];
    }
}

/// <summary>The most bytes a request's body may have.</summary>
internal sealed record BodyLimit(long? MaxRequestBodySize) : IRequestSizeLimitMetadata;

/// <summary>What the first screen offers.</summary>
/// <param name="Demo">The words that say the demo is invented.</param>
/// <param name="Person">Who is signed in, or null where nobody signs in.</param>
public sealed record StartView(IReadOnlyList<OpenVisitView> Visits, IReadOnlyList<AssetView> Assets, IReadOnlyList<string> Refrigerants, string Demo, string? Person);

public sealed record OpenVisitView(string Id, string Site, DateTimeOffset At);

public sealed record AssetView(string Id, string Site, string Unit);
