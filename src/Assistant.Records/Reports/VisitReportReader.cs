using Assistant.Dialogue.Visits;
using Assistant.Records.Assets;
using Assistant.Records.Log;
using Assistant.Records.Pictures;
using Assistant.Records.Reports.Model;
using Assistant.Records.Storage;
using Assistant.Trade.Refrigerants;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Reports;

/// <summary>Reads a visit's report from the records.</summary>
public sealed class VisitReportReader(EventLog log, PictureStore pictures)
{
    private readonly AssetStore assets = new(log.Database);

    /// <returns>The report, or null where there is no such visit.</returns>
    public async Task<VisitReport?> ReadAsync(string visitId, CancellationToken cancellation = default)
    {
        var events = await log.ReadAsync(visitId, cancellation);
        if (events.IsEmpty)
        {
            return null;
        }

        // The head of what was read, not of what may have come in since.
        var head = await log.Database.UseAsync(context => context.Events.AsNoTracking()
            .Where(e => e.VisitId == visitId && e.Number == events.Length).Select(e => e.Hash).FirstAsync(cancellation));
        var assetId = events.OfType<VisitOpened>().First().AssetId;
        var asset = assetId is null ? null : await assets.FindAsync(assetId, cancellation);
        var kept = new Dictionary<string, EncodedPicture>(StringComparer.Ordinal);
        foreach (var id in events.OfType<PictureTaken>().Select(p => p.PictureId).Distinct())
        {
            if (await pictures.FindAsync(id, cancellation) is { } picture)
            {
                kept.Add(id, picture);
            }
        }

        return VisitReportBuilder.Build(
            visitId, events, asset?.Unit, taken => Of(taken, kept.GetValueOrDefault(taken.PictureId)),
            new(RefrigerantLibrary.DataVersion, events.Length, Convert.ToHexStringLower(head)));
    }

    private static ReportedPicture Of(PictureTaken taken, EncodedPicture? kept) =>
        new(taken.PictureId, taken.At, taken.By, taken.Caption, kept?.Jpeg, kept?.Width ?? 0, kept?.Height ?? 0);
}
