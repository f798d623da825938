using Assistant.App.Hosting;
using Assistant.Records.Signing;

namespace Assistant.App.Web;

/// <summary>Reports under signed addresses that expire: whoever has one reads that report, and nothing else.</summary>
internal static class ReportLinkEndpoints
{
    public static void MapReportLinks(this WebApplication app)
    {
        app.MapPost("/api/visits/{id}/report-link", MintAsync);
        app.MapGet(ReportLinks.Root + "{token}", (string token, CallRoom room, HttpContext context) => ShowAsync(token, "html", room, context)).AllowAnonymous();
        app.MapGet(ReportLinks.Root + "{token}/report.pdf", (string token, CallRoom room, HttpContext context) => ShowAsync(token, "pdf", room, context)).AllowAnonymous();
    }

    private static async Task<ReportLinkView> MintAsync(string id, int? days, CallRoom room, CancellationToken cancellation)
    {
        var visit = await room.VisitAsync(id, cancellation);
        if (days is < 1 or > 90)
        {
            throw new RequestRefused($"days: a link holds for 1 to 90 days, not {days}.");
        }

        await room.Links.Heads.NoteAsync(visit, cancellation);
        var link = room.Links.Mint(visit, days ?? ReportLinks.UsualDays);
        return new(link.Path, link.Until);
    }

    private static async Task ShowAsync(string token, string format, CallRoom room, HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        context.Response.Headers["X-Robots-Tag"] = "noindex";
        var verdict = room.Links.Check(token);
        var report = verdict.VisitId is { } visit ? await room.Reports.PrintAsync(visit, format, context.RequestAborted) : null;
        if (report is null)
        {
            context.Response.StatusCode = verdict.Standing == LinkStanding.Expired ? StatusCodes.Status410Gone : StatusCodes.Status404NotFound;
            context.Response.ContentType = "text/plain; charset=utf-8";
            await context.Response.WriteAsync(
                verdict.Standing == LinkStanding.Expired ? "This link has expired. Ask the office that sent it for a new one." : "This address opens no report. Check that it was copied whole.",
                context.RequestAborted);
            return;
        }

        context.Response.Headers.ContentSecurityPolicy = PageGuards.ReportPolicy;
        context.Response.ContentType = report.ContentType;
        await context.Response.Body.WriteAsync(report.Content, context.RequestAborted);
    }
}

/// <param name="Path">The address without its host.</param>
public sealed record ReportLinkView(string Path, DateTimeOffset Until);
