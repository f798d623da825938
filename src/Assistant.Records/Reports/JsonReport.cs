using System.Text.Json;
using System.Text.Json.Serialization;
using Assistant.Records.Reports.Model;
using Assistant.Trade.Sums;

namespace Assistant.Records.Reports;

/// <summary>A report for other programs: everything as it was said, nothing shortened or cleaned; pictures by their id.</summary>
public static class JsonReport
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
        WriteIndented = true,
    };

    public static string Write(VisitReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return JsonSerializer.Serialize(
            new
            {
                Schema = "coldwalk-visit-report-1",
                report.VisitId,
                report.Site,
                report.AssetId,
                report.Unit,
                report.Units,
                report.OpenedAt,
                report.ClosedAt,
                report.Outcome,
                report.HandedTo,
                report.People,
                report.Readings,
                Verdicts = report.Verdicts.Select(v => new { v.Number, v.At, v.Fault, v.Standing, v.Text, v.Because }),
                Judgements = report.Judgements.Select(j => new { j.Number, j.At, j.Walk, j.Stop, j.Judgement, j.Outcome, j.Text, j.Because }),
                Leaks = report.Leaks.Select(l => new { l.Number, l.At, l.By, l.Place }),
                report.IsLeakRepaired,
                Mended = report.Mended.Select(m => new { m.Number, m.At, m.By, m.Fault }),
                Cautions = report.Cautions.Select(c => new { c.Number, c.At, c.By, c.Caution, c.Place }),
                Cylinders = report.Cylinders.Select(c => new { c.Number, c.At, c.By, c.EntryId, c.Tag, c.CylinderKind, c.Purpose, c.Refrigerant, c.TareGrams, c.GrossBeforeGrams, c.GrossAfterGrams }),
                CylinderAccounts = report.Balances?.Cylinders.Values.Select(b => new
                {
                    b.Tag,
                    OpeningGrams = b.Opening.Value,
                    ChargedGrams = b.Charged.Value,
                    RecoveredGrams = b.Recovered.Value,
                    HoseLossGrams = b.HoseLoss.Value,
                    TransferredInGrams = b.TransferredIn.Value,
                    TransferredOutGrams = b.TransferredOut.Value,
                    UnexplainedGrams = b.Unexplained.Value,
                    RemainingGrams = b.Remaining.Value,
                    b.Refrigerants,
                }),
                FollowUps = report.FollowUps.Select(f => new { f.Number, f.At, f.By, f.Due, f.What }),
                Pictures = report.Pictures.Select(p => new { p.Id, p.At, p.By, p.Caption, IsKept = p.Jpeg is not null, p.Width, p.Height }),
                Messages = report.Messages.Select(m => new { m.Number, m.At, m.By, m.Channel, m.MessageId, m.Text }),
                MeasuredCycle = Corners(report.Plotted.Measured),
                DesignedCycle = Corners(report.Plotted.Designed),
                report.Basis,
            },
            Options);
    }

    private static IEnumerable<object>? Corners(RefrigerationCycle? cycle) => cycle?.Points.Select(p => (object)new
    {
        p.Corner,
        PressurePaAbsolute = p.Pressure.Pascals,
        EnthalpyJoulesPerKilogram = p.Enthalpy.JoulesPerKilogram,
        p.IsAssumed,
    });
}
