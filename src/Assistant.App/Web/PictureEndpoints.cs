using Assistant.App.Hosting;
using Assistant.Records.Pictures;
using Microsoft.AspNetCore.Http.Metadata;

namespace Assistant.App.Web;

/// <summary>Pictures from the page's camera: the bytes as the body, the caption in the address.</summary>
internal static class PictureEndpoints
{
    /// <summary>The page scales before it sends; this leaves room for a phone that can not.</summary>
    private const int LargestPicture = 8 * 1024 * 1024;

    public static void MapPictures(this WebApplication app) =>
        app.MapPost("/api/visits/{id}/pictures", KeepAsync).WithMetadata(new BodyLimit(LargestPicture));

    private static async Task<PictureView> KeepAsync(string id, string? by, string? caption, HttpRequest request, CallRoom room, TimeProvider clock, CancellationToken cancellation)
    {
        if (request.ContentType?.StartsWith("image/", StringComparison.OrdinalIgnoreCase) != true)
        {
            throw new RequestRefused("A picture is wanted: image/jpeg or image/png.", StatusCodes.Status415UnsupportedMediaType);
        }

        var visit = await room.VisitAsync(id, cancellation);
        var person = RequestRules.Person(by);
        var words = string.IsNullOrWhiteSpace(caption) ? "" : RequestRules.Line("caption", caption, RequestRules.LongestCaption);
        using var body = new MemoryStream();
        await request.Body.CopyToAsync(body, cancellation);
        var stop = (await room.Conversations.StateOfAsync(visit, cancellation)).Stop;
        try
        {
            var added = await room.Pictures.AddAsync(
                new(VisitEndpoints.Channel, id, person, clock.GetUtcNow(), body.ToArray(), words, stop), cancellation: cancellation);
            return new(added.PictureId);
        }
        catch (PictureRefusedException refused)
        {
            throw new RequestRefused(refused.Message);
        }
    }

    private sealed record BodyLimit(long? MaxRequestBodySize) : IRequestSizeLimitMetadata;
}

public sealed record PictureView(string Picture);
