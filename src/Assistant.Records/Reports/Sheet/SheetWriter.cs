using Assistant.Dialogue.Replies;
using Assistant.Records.Reports.Model;
using Assistant.Trade.Quantities;

namespace Assistant.Records.Reports.Sheet;

/// <summary>Lays a report out: what the customer reads first, then everything the office keeps.</summary>
public sealed class SheetWriter(PhraseBook phrases)
{
    private readonly ReportWords words = new(phrases);

    /// <param name="paper">Null takes Letter where the site's units are US, A4 otherwise.</param>
    public ReportSheet Write(VisitReport report, Paper? paper = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        return new(
            words["title"] + " - " + report.Site,
            report.ClosedAt ?? report.OpenedAt,
            paper ?? (report.Units == UnitSystem.Us ? Paper.Letter : Paper.A4),
            [.. new CustomerPage(report, words).Blocks()],
            [.. new OfficePages(report, words).Blocks()]);
    }
}
