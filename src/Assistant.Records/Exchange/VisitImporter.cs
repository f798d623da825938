using Assistant.Dialogue.Visits;
using Assistant.Records.Chain;
using Assistant.Records.Log;
using Assistant.Records.Pictures;
using Assistant.Records.Readings;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;
using SkiaSharp;

namespace Assistant.Records.Exchange;

/// <summary>
/// Takes in a visit's file. Everything is verified before anything is stored: each part against the manifest, each picture against
/// its id, each event against the chain. The visit is then on record as it was; its reminders stay with who set them.
/// </summary>
public sealed class VisitImporter(IRecordsDatabase database)
{
    /// <exception cref="RecordsException">The file does not verify, or the visit is on record with another log; nothing was stored.</exception>
    public async Task<ImportedVisit> ImportAsync(byte[] file, DateTimeOffset at, CancellationToken cancellation = default)
    {
        var (visit, pictures) = VisitArchive.Read(file);
        var events = Verify(visit);
        var images = pictures.Select(p => Picture(p.Key, p.Value)).ToList();
        return await database.WriteAsync(async context =>
        {
            await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
            var head = Convert.FromHexString(visit.Head.Hash);
            if (await context.Visits.AsNoTracking().FirstOrDefaultAsync(v => v.Id == visit.Visit.Id, cancellation) is { } there)
            {
                return there.Version == visit.Head.Version && there.HeadHash.AsSpan().SequenceEqual(head)
                    ? new ImportedVisit(there.Id, there.Version, WasThere: true)
                    : throw VisitArchive.Bad($"visit {there.Id} is on record here with {there.Version} events and another head; the file has {visit.Head.Version}");
            }

            await AddAssetAsync(context, visit, at, cancellation);
            var opened = (VisitOpened)events[0];
            context.Visits.Add(new()
            {
                Id = visit.Visit.Id,
                Site = opened.Site,
                AssetId = opened.AssetId,
                OpenedAt = opened.At,
                ClosedAt = ClosedAt(events),
                Version = visit.Head.Version,
                HeadHash = head,
            });
            context.Events.AddRange(visit.Events);
            foreach (var image in images)
            {
                if (!await context.Pictures.AnyAsync(p => p.Id == image.Id, cancellation))
                {
                    context.Pictures.Add(new() { Id = image.Id, Jpeg = image.Jpeg, Width = image.Width, Height = image.Height });
                }
            }

            await context.SaveChangesAsync(cancellation);
            await transaction.CommitAsync(cancellation);
            return new ImportedVisit(visit.Visit.Id, visit.Head.Version, WasThere: false);
        }, cancellation);
    }

    private static List<VisitEvent> Verify(VisitFile file)
    {
        var id = file.Visit.Id;
        if (file.Events.FirstOrDefault(e => e.VisitId != id) is { } stray)
        {
            throw VisitArchive.Bad($"event {stray.Number} belongs to another visit");
        }

        if (ChainVerifier.Check(id, file.Head.Version, Convert.FromHexString(file.Head.Hash), file.Events) is { } broken)
        {
            throw VisitArchive.Bad($"event {broken.Number}: {broken.Why.TrimEnd('.')}");
        }

        var events = file.Events.Select(e => EventJson.Read(e.Kind, e.Body, e.Personal, e.Number)).ToList();
        if (file.Head.VisitId != id || events is not [VisitOpened opened, ..] || opened.AssetId != file.Asset?.Id)
        {
            throw VisitArchive.Bad("its log, its head and its equipment are not of one visit");
        }

        return events;
    }

    private static DateTimeOffset? ClosedAt(List<VisitEvent> events)
    {
        var withdrawn = VisitReadings.Withdrawals(events);
        return events.OfType<VisitClosed>().LastOrDefault(c => !withdrawn.ContainsKey(c.Number))?.At;
    }

    // What is known of the equipment here stays as it is: this installation's record is not overwritten by a file.
    private static async Task AddAssetAsync(RecordsContext context, VisitFile file, DateTimeOffset at, CancellationToken cancellation)
    {
        if (file.Asset is not { } asset || await context.Assets.AnyAsync(a => a.Id == asset.Id, cancellation))
        {
            return;
        }

        context.Assets.Add(new() { Id = asset.Id, Site = asset.Site, Unit = asset.Unit });
        var sequence = 0;
        foreach (var (name, text) in asset.Details.OrderBy(d => d.Key, StringComparer.Ordinal))
        {
            context.AssetFacts.Add(new() { AssetId = asset.Id, Sequence = ++sequence, Name = name, Text = text, At = at });
        }
    }

    // Kept byte for byte, as its id is its hash; only its header is read, never more than a picture may cost.
    private static EncodedPicture Picture(string id, byte[] jpeg)
    {
        using var data = SKData.CreateCopy(jpeg);
        using var codec = SKCodec.Create(data);
        if (codec is not { EncodedFormat: SKEncodedImageFormat.Jpeg } || Math.Max(codec.Info.Width, codec.Info.Height) > PictureLimits.LongestEdge)
        {
            throw VisitArchive.Bad($"picture {id} is no picture of these records");
        }

        var picture = EncodedPicture.Of(jpeg, codec.Info.Width, codec.Info.Height);
        return picture.Id == id ? picture : throw VisitArchive.Bad($"picture {id} was changed");
    }
}

/// <param name="WasThere">True where the visit was on record already, the same to the last event: nothing was added.</param>
public sealed record ImportedVisit(string VisitId, int Events, bool WasThere);
