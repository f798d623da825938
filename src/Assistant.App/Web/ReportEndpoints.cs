using Assistant.App.Hosting;

namespace Assistant.App.Web;

/// <summary>A visit's report, to read or to send on.</summary>
internal static class ReportEndpoints
{
    public static void MapReports(this WebApplication app)
    {
        foreach (var format in VisitReports.Formats)
        {
            app.MapGet($"/visits/{{id}}/report.{format}", (string id, CallRoom room, HttpContext context) => PrintAsync(id, format, room, context)).RequireRateLimiting(RateLimits.Reports);
        }

        app.MapGet("/api/visits/{id}/plots", PlotsAsync);
        app.MapGet("/visits/{id}/plots/{name}.svg", PlotAsync);
    }

    private static async Task<PlotView[]> PlotsAsync(string id, CallRoom room, CancellationToken cancellation) =>
        [.. (await room.Reports.PlotsAsync(await room.VisitAsync(id, cancellation), cancellation)).Select(p => new PlotView(p.Name, p.Title, p.Alt, p.Svg))];

    private static async Task<IResult> PlotAsync(string id, string name, CallRoom room, HttpContext context)
    {
        var plots = await room.Reports.PlotsAsync(await room.VisitAsync(id, context.RequestAborted), context.RequestAborted);
        var plot = plots.FirstOrDefault(p => p.Name == name)
            ?? throw new RequestRefused("This visit's readings do not give that plot.", StatusCodes.Status404NotFound);
        context.Response.Headers.ContentSecurityPolicy = PageGuards.ReportPolicy;
        return Results.Text(plot.Svg, "image/svg+xml; charset=utf-8");
    }

    private static async Task PrintAsync(string id, string format, CallRoom room, HttpContext context)
    {
        var visit = await room.VisitAsync(id, context.RequestAborted);
        var report = await room.Reports.PrintAsync(visit, format, context.RequestAborted)
            ?? throw new RequestRefused("There is no such visit.", StatusCodes.Status404NotFound);
        context.Response.Headers.ContentSecurityPolicy = PageGuards.ReportPolicy;
        context.Response.ContentType = report.ContentType;
        if (format != "html")
        {
            context.Response.Headers.ContentDisposition = $"attachment; filename=\"coldwalk-{id}.{format}\"";
        }

        await context.Response.Body.WriteAsync(report.Content, context.RequestAborted);
    }
}

/// <summary>A plot for the page: SVG to stand in it, and the same in words.</summary>
public sealed record PlotView(string Name, string Title, string Alt, string Svg);
