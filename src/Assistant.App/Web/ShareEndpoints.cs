using Assistant.App.Hosting;
using Assistant.Records.People;

namespace Assistant.App.Web;

/// <summary>A visit given to other hands: the spoken code it is joined by, from any channel.</summary>
internal static class ShareEndpoints
{
    public static void MapSharing(this WebApplication app)
    {
        app.MapGet("/api/visits/{id}/share", CodeAsync);
        app.MapPost("/api/join", JoinAsync);
    }

    private static async Task<ShareView> CodeAsync(string id, CallRoom room, PeopleService people, HttpContext context, CancellationToken cancellation) =>
        new(await people.Visits.CodeOfAsync(await room.VisitAsync(id, cancellation), SignIn.PersonOf(context)?.FirmId, cancellation));

    private static async Task<VisitView> JoinAsync(JoinRequest request, VisitViews views, PeopleService people, HttpContext context, CancellationToken cancellation)
    {
        var id = RequestRules.Id(request.Id);
        return await people.Visits.JoinByCodeAsync(RequestRules.Line("code", request.Code, 20), SignIn.PersonOf(context), VisitEndpoints.Channel, id, called: SignIn.NameOf(context, request.By), cancellation: cancellation) is Joined joined
            ? await views.OpenedAsync(id, joined.VisitId, cancellation)
            : throw new RequestRefused("No open visit has that code. Ask for it again: it stands under More, Give to another phone.", StatusCodes.Status404NotFound);
    }
}

public sealed record ShareView(string Code);

/// <param name="Id">Made on the page: the address of the visit on this phone.</param>
/// <param name="By">How whoever joins is called, where nobody signs in.</param>
public sealed record JoinRequest(string? Id, string? Code, string? By = null);
