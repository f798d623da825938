using Assistant.App.Hosting;

namespace Assistant.App.Web;

/// <summary>A visit's report, to read or to send on.</summary>
internal static class ReportEndpoints
{
    public static void MapReports(this WebApplication app)
    {
        foreach (var format in VisitReports.Formats)
        {
            app.MapGet($"/visits/{{id}}/report.{format}", (string id, CallRoom room, HttpContext context) => PrintAsync(id, format, room, context));
        }
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
