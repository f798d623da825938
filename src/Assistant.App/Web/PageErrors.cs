using Assistant.Records.Storage;

namespace Assistant.App.Web;

/// <summary>Turns what went wrong into a status and one line for people; the rest of a failure goes to standard error.</summary>
internal static class PageErrors
{
    public static void UsePageErrors(this WebApplication app) => app.Use(async (context, next) =>
    {
        try
        {
            await next(context);
        }
        catch (Exception failure) when (!context.Response.HasStarted && Explain(failure) is var (status, line))
        {
            context.Response.StatusCode = status;
            await context.Response.WriteAsJsonAsync(new ErrorView(line));
        }
    });

    private static (int Status, string Line)? Explain(Exception failure)
    {
        switch (failure)
        {
            case RequestRefused refused:
                return (refused.Status, refused.Message);
            case BadHttpRequestException { StatusCode: StatusCodes.Status413PayloadTooLarge }:
                return (StatusCodes.Status413PayloadTooLarge, "That is too large to be taken.");
            case BadHttpRequestException bad:
                return (bad.StatusCode, "The request can not be read; JSON with the documented keys is wanted.");
            case RecordsException { Fault: RecordsFault.Refused } refused:
                return (StatusCodes.Status400BadRequest, refused.Message);
            case RecordsException records:
                return (StatusCodes.Status503ServiceUnavailable, records.Message);
            case OperationCanceledException:
                return null;
            default:
                Console.Error.WriteLine(failure);
                return (StatusCodes.Status500InternalServerError, "The program failed on this; nothing was stored. It is noted on its console.");
        }
    }
}
