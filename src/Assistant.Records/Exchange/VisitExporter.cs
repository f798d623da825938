using Assistant.Dialogue.Visits;
using Assistant.Records.Assets;
using Assistant.Records.Log;
using Assistant.Records.Pictures;
using Assistant.Records.Signing;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Exchange;

/// <summary>Writes a visit as one file that another installation can verify and take in.</summary>
public sealed class VisitExporter(IRecordsDatabase database, SigningKey key)
{
    private readonly AssetStore assets = new(database);

    /// <summary>The file; the same log gives the same bytes.</summary>
    /// <returns>Null where there is no such visit.</returns>
    public async Task<byte[]?> ExportAsync(string visitId, CancellationToken cancellation = default)
    {
        var (visit, rows) = await database.UseAsync(async context =>
        {
            // One view of both: an event that comes in meanwhile is in neither.
            await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
            return (
                await context.Visits.AsNoTracking().FirstOrDefaultAsync(v => v.Id == visitId, cancellation),
                await context.Events.AsNoTracking().Where(e => e.VisitId == visitId).OrderBy(e => e.Number).ToListAsync(cancellation));
        });
        if (visit is null)
        {
            return null;
        }

        var asset = visit.AssetId is { } id ? await assets.FindAsync(id, cancellation) : null;
        var pictures = await PicturesAsync(rows, cancellation);
        return VisitArchive.Write(
            new(
                VisitFile.Known,
                new(visit.Id, visit.Site, visit.AssetId, visit.OpenedAt, visit.ClosedAt),
                asset is null ? null : new(asset.Id, asset.Site, asset.Unit, asset.Details),
                rows,
                [.. pictures.Keys.Order(StringComparer.Ordinal)],
                SignedHead.Of(visit.Id, visit.Version, Convert.ToHexStringLower(visit.HeadHash), key)),
            pictures);
    }

    private async Task<Dictionary<string, byte[]>> PicturesAsync(List<EventRow> rows, CancellationToken cancellation)
    {
        using var store = new PictureStore(database);
        var kept = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        foreach (var taken in rows.Select(r => EventJson.Read(r.Kind, r.Body, r.Personal, r.Number)).OfType<PictureTaken>())
        {
            if (await store.FindAsync(taken.PictureId, cancellation) is { } picture)
            {
                kept[taken.PictureId] = picture.Jpeg;
            }
        }

        return kept;
    }
}
