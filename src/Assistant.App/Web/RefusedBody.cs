using System.Buffers;
using Microsoft.AspNetCore.Http.Features;

namespace Assistant.App.Web;

/// <summary>
/// What is too large and was answered without being read is read away afterwards, within bounds: who is still sending when the connection
/// closes sees a broken line instead of the answer.
/// </summary>
internal static class RefusedBody
{
    /// <summary>Twice the largest picture: more than anything a client of ours sends by mistake.</summary>
    private const long Most = 2L * PictureEndpoints.LargestPicture;

    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(10);

    public static async Task ReadAwayAsync(HttpContext context)
    {
        var limit = context.Features.Get<IHttpMaxRequestBodySizeFeature>();
        if (limit is not { IsReadOnly: false } || context.Request.ContentLength is not { } length || length > Most || length <= limit.MaxRequestBodySize)
        {
            return;
        }

        await context.Response.CompleteAsync();
        limit.MaxRequestBodySize = length;
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted);
        patience.CancelAfter(Longest);
        var buffer = ArrayPool<byte>.Shared.Rent(16 * 1024);
        try
        {
            while (await context.Request.Body.ReadAsync(buffer, patience.Token) > 0)
            {
            }
        }
        catch (Exception gone) when (gone is OperationCanceledException or IOException)
        {
            // Who left has no use for the answer.
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }
}
