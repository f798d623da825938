using Assistant.Records.Storage;
using Microsoft.Net.Http.Headers;

namespace Assistant.App.Web;

/// <summary>Turns what went wrong into a status and one line for people; the rest of a failure, and where the records lie, goes to standard error.</summary>
internal static class PageErrors
{
    private const string TooLarge = "That is too large to be taken.";

    public static void UsePageErrors(this WebApplication app) => app.Use(async (context, next) =>
    {
        try
        {
            RefuseOtherCharsets(context.Request);
            await next(context);
            if (context.Response is { HasStarted: false, StatusCode: StatusCodes.Status413PayloadTooLarge })
            {
                // The framework turns it away by itself, and without a word, where it reads the body.
                await context.Response.WriteAsJsonAsync(new ErrorView(TooLarge));
            }
        }
        catch (Exception failure) when (!context.Response.HasStarted && Explain(failure) is var (status, line))
        {
            context.Response.StatusCode = status;
            await context.Response.WriteAsJsonAsync(new ErrorView(line));
        }

        await RefusedBody.ReadAwayAsync(context);
    });

    /// <summary>The framework fails on a charset it does not know, and reads others than JSON is written in.</summary>
    private static void RefuseOtherCharsets(HttpRequest request)
    {
        if (request.Path.StartsWithSegments("/api", StringComparison.Ordinal)
            && MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
            && type.Charset is { HasValue: true } charset
            && !charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase) && !charset.Equals("\"utf-8\"", StringComparison.OrdinalIgnoreCase))
        {
            throw new RequestRefused("Content-Type: text in UTF-8 is wanted.", StatusCodes.Status415UnsupportedMediaType);
        }
    }

    private static (int Status, string Line)? Explain(Exception failure)
    {
        switch (failure)
        {
            case RequestRefused refused:
                return (refused.Status, refused.Message);
            case BadHttpRequestException { StatusCode: StatusCodes.Status413PayloadTooLarge }:
                return (StatusCodes.Status413PayloadTooLarge, TooLarge);
            case BadHttpRequestException bad:
                return (bad.StatusCode, "The request can not be read; JSON with the documented keys is wanted.");
            case RecordsException { Fault: RecordsFault.Refused } refused:
                return (StatusCodes.Status400BadRequest, RecordsTrouble.Line(refused));
            case RecordsException records:
                Console.Error.WriteLine(records.Message);
                return (StatusCodes.Status503ServiceUnavailable, RecordsTrouble.Line(records));
            case OperationCanceledException:
                return null;
            default:
                Console.Error.WriteLine(failure);
                return (StatusCodes.Status500InternalServerError, "The program failed on this; nothing was stored. It is noted on its console.");
        }
    }
}
