using Assistant.App.Hosting;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.App.Web;

/// <summary>
/// What a balancer or a supervisor asks: <c>/health/live</c>, the process answers; <c>/health/ready</c>, its records can be read too.
/// Answered before any guard, to whoever asks, over plain HTTP behind a proxy as well: nothing is in it but yes or no and why not.
/// </summary>
internal static class HealthEndpoints
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    public static void UseHealth(this WebApplication app, CallRoom room) => app.Use((context, next) => context.Request.Path.Value switch
    {
        "/health/live" => AnswerAsync(context, null),
        "/health/ready" => ReadyAsync(context, room.Log.Database),
        _ => next(context),
    });

    private static async Task ReadyAsync(HttpContext context, IRecordsDatabase database)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted);
        patience.CancelAfter(Patience);
        try
        {
            await using var records = database.NewContext();
            _ = await records.Firms.AsNoTracking().AnyAsync(patience.Token);
            await AnswerAsync(context, null);
        }
        catch (OperationCanceledException) when (!context.RequestAborted.IsCancellationRequested)
        {
            await AnswerAsync(context, "the records do not answer");
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            // Which file or host it is stays inside.
            await AnswerAsync(context, database.Explain(failure) is { } explained ? $"the records: {explained.Fault}" : "the records can not be read");
        }
    }

    private static Task AnswerAsync(HttpContext context, string? why)
    {
        context.Response.StatusCode = why is null ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable;
        context.Response.Headers.CacheControl = "no-store";
        return context.Response.WriteAsJsonAsync(new HealthView(why is null, why), context.RequestAborted);
    }
}

/// <param name="Why">Why it is not, or null.</param>
public sealed record HealthView(bool Ok, string? Why);
