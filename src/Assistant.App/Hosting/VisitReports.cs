using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Records.Log;
using Assistant.Records.Pictures;
using Assistant.Records.Plots;
using Assistant.Records.Reports;
using Assistant.Records.Reports.Html;
using Assistant.Records.Reports.Pdf;
using Assistant.Records.Reports.Sheet;

namespace Assistant.App.Hosting;

/// <summary>A visit's report in each of its forms.</summary>
public sealed class VisitReports(EventLog log, PictureStore pictures, PhraseBook phrases)
{
    /// <summary>The forms by the name a command or an address gives them.</summary>
    public static IReadOnlyList<string> Formats { get; } = ["html", "pdf", "json"];

    /// <summary>The report, or null where there is no such visit.</summary>
    /// <param name="format">One of <see cref="Formats"/>.</param>
    public async Task<PrintedReport?> PrintAsync(string visitId, string format, CancellationToken cancellation)
    {
        if (await new VisitReportReader(log, pictures).ReadAsync(visitId, cancellation) is not { } report)
        {
            return null;
        }

        return format switch
        {
            "html" => new("text/html; charset=utf-8", Utf8(HtmlReport.Write(new SheetWriter(phrases).Write(report)))),
            "pdf" => new("application/pdf", PdfReport.Write(new SheetWriter(phrases).Write(report))),
            "json" => new("application/json", Utf8(JsonReport.Write(report))),
            _ => throw new ArgumentOutOfRangeException(nameof(format), format, "A report is html, pdf or json."),
        };
    }

    /// <summary>The plots that the visit's readings give; none where there is no such visit.</summary>
    public async Task<ImmutableArray<Plot>> PlotsAsync(string visitId, CancellationToken cancellation)
    {
        var events = await log.ReadAsync(visitId, cancellation);
        return events.IsEmpty ? [] : VisitPlots.Of(events, phrases);
    }

    private static byte[] Utf8(string text) => System.Text.Encoding.UTF8.GetBytes(text);
}

/// <summary>A report as a file.</summary>
public sealed record PrintedReport(string ContentType, byte[] Content);
