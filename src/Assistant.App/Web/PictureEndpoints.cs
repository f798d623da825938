using System.Buffers.Binary;
using Assistant.App.Hosting;
using Assistant.Records.Pictures;

namespace Assistant.App.Web;

/// <summary>
/// Pictures from the page's camera. The id is made on the phone; the bytes come in pieces, each with its place, so that a picture goes on
/// after a broken line where it stopped and is taken once.
/// </summary>
internal static class PictureEndpoints
{
    /// <summary>The page scales before it sends; this leaves room for a phone that can not.</summary>
    public const int LargestPicture = 8 * 1024 * 1024;

    private const int LargestPiece = 512 * 1024;

    public static void MapPictures(this WebApplication app)
    {
        app.MapGet("/api/visits/{id}/pictures/{picture}", HowFarAsync);
        app.MapPost("/api/visits/{id}/pictures/{picture}", AddAsync).WithMetadata(new BodyLimit(LargestPiece)).RequireRateLimiting(RateLimits.Uploads);
        app.MapGet("/visits/{id}/pictures/{picture}.jpg", ShowAsync);
    }

    private static async Task<UploadView> HowFarAsync(string id, string picture, CallRoom room, PictureUploads uploads, CancellationToken cancellation)
    {
        var key = await KeyAsync(id, picture, room, cancellation);
        return new(uploads.Received(key), uploads.Finished(key));
    }

    /// <param name="offset">Where the piece begins.</param>
    /// <param name="size">How many bytes the whole picture has.</param>
    /// <param name="stop">The stop of the walk it was taken at.</param>
    /// <param name="ago">Seconds since it was taken, by the phone's own clock.</param>
    private static async Task<UploadView> AddAsync(
        string id, string picture, long offset, long size, string? by, string? caption, string? stop, double? ago,
        HttpRequest request, CallRoom room, PictureUploads uploads, TimeProvider clock, CancellationToken cancellation)
    {
        var key = await KeyAsync(id, picture, room, cancellation);
        if (uploads.Finished(key) is { } before)
        {
            return new(size, before);
        }

        if (size is <= 0 or > LargestPicture || offset < 0 || offset >= size)
        {
            throw new RequestRefused($"A picture may have {LargestPicture / 1024 / 1024} MB, and a piece lies inside it.", StatusCodes.Status413PayloadTooLarge);
        }

        using var piece = new MemoryStream();
        await request.Body.CopyToAsync(piece, cancellation);
        var bytes = piece.GetBuffer().AsMemory(0, (int)piece.Length);
        if (offset + bytes.Length > size || (offset == 0 && !IsPicture(bytes.Span)))
        {
            throw new RequestRefused("A picture is wanted: JPEG, PNG or WebP, in pieces of the size it was said to have.", StatusCodes.Status415UnsupportedMediaType);
        }

        var there = await uploads.AddAsync(key, offset, bytes, cancellation);
        return there < size ? new(there, null) : new(there, await TakeAsync(id, key, new(SignIn.NameOf(request.HttpContext, by), caption, stop, ago), room, uploads, clock, cancellation));
    }

    private static async Task<string> TakeAsync(string id, string key, Taken taken, CallRoom room, PictureUploads uploads, TimeProvider clock, CancellationToken cancellation)
    {
        var visit = await room.VisitAsync(id, cancellation);
        var state = await room.Conversations.StateOfAsync(visit, cancellation);
        var words = string.IsNullOrWhiteSpace(taken.Caption) ? "" : RequestRules.Line("caption", taken.Caption, RequestRules.LongestCaption);
        var stop = string.IsNullOrWhiteSpace(taken.Stop) ? state.Stop : RequestRules.Line("stop", taken.Stop, RequestRules.LongestName);
        try
        {
            var added = await room.Pictures.AddAsync(
                new(VisitEndpoints.Channel, id, taken.By, RequestRules.SaidAt(clock.GetUtcNow(), taken.Ago, state.OpenedAt), await uploads.ReadAsync(key, cancellation), words, stop),
                cancellation: cancellation);
            uploads.Finish(key, added.PictureId);
            return added.PictureId;
        }
        catch (PictureRefusedException refused)
        {
            uploads.Drop(key);
            throw new RequestRefused(refused.Message, StatusCodes.Status415UnsupportedMediaType);
        }
    }

    private static async Task<IResult> ShowAsync(string id, string picture, CallRoom room, CancellationToken cancellation)
    {
        var visit = await room.VisitAsync(id, cancellation);
        var isOfVisit = (await room.Conversations.StateOfAsync(visit, cancellation)).Pictures.Any(p => p.PictureId == picture);
        return isOfVisit && await room.Album.FindAsync(picture, cancellation) is { } kept
            ? TypedResults.Bytes(kept.Jpeg, "image/jpeg")
            : throw new RequestRefused("There is no such picture on this visit.", StatusCodes.Status404NotFound);
    }

    private static async Task<string> KeyAsync(string id, string picture, CallRoom room, CancellationToken cancellation)
    {
        await room.VisitAsync(id, cancellation);
        return $"{RequestRules.Id(id)}.{RequestRules.Id(picture)}";
    }

    /// <summary>By its first bytes, whatever it calls itself; the whole is decoded before it is kept.</summary>
    private static bool IsPicture(ReadOnlySpan<byte> start) =>
        start.Length >= 12
        && (start[..3].SequenceEqual((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF])
            || BinaryPrimitives.ReadUInt64BigEndian(start) == 0x89504E470D0A1A0A
            || (start[..4].SequenceEqual("RIFF"u8) && start[8..12].SequenceEqual("WEBP"u8)));

    private sealed record Taken(string By, string? Caption, string? Stop, double? Ago);
}

/// <summary>How far a picture has come.</summary>
/// <param name="Received">Bytes that are there.</param>
/// <param name="Picture">Its id on the visit once it is whole, or null.</param>
public sealed record UploadView(long Received, string? Picture);
