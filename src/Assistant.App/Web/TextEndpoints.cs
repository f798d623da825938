using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Assistant.Channels.Text;
using Assistant.Records.Outbox;
using Microsoft.AspNetCore.Http.Metadata;

namespace Assistant.App.Web;

/// <summary>
/// What an SMS gateway calls: <c>/text/inbound</c> for a message (key, from, text, id; time in Unix seconds; charset) and
/// <c>/text/report</c> for a delivery report (key, reply, attempt, type as Kannel numbers them). A message is stored before it is
/// answered for with an empty 200; anything else makes the gateway bring it again.
/// </summary>
internal static class TextEndpoints
{
    private const int LargestBody = 16 * 1024;
    private const int LongestId = 200;
    private const int LongestNumber = 40;

    public static void MapTextMessages(this WebApplication app)
    {
        string[] methods = [HttpMethods.Get, HttpMethods.Post];
        app.MapMethods("/text/inbound", methods, InboundAsync).WithMetadata(new BodyLimit(LargestBody)).AllowAnonymous();
        app.MapMethods("/text/report", methods, ReportAsync).WithMetadata(new BodyLimit(LargestBody)).AllowAnonymous();
    }

    private static async Task<IResult> InboundAsync(HttpRequest request, TextDesk desk, TextService service, TextsOfANumber numbers, TextSettings settings, TimeProvider clock, CancellationToken cancellation)
    {
        var fields = await GatewayFields.ReadAsync(request, cancellation);
        Admit(fields, settings);
        var sent = fields.Text("time") is { Length: > 0 } time
            ? Time(time) ?? throw new RequestRefused("time: Unix seconds, or a date and time after ISO 8601.")
            : clock.GetUtcNow();
        var (id, from) = (Needed(fields, "id", LongestId), Needed(fields, "from", LongestNumber));
        numbers.Admit(from);
        await desk.ReceiveAsync(id, from, fields.Text("text"), sent, cancellation);
        service.Ring();
        return Results.Ok();
    }

    private static async Task<IResult> ReportAsync(HttpRequest request, OutboxDeliverer deliverer, TextSettings settings, CancellationToken cancellation)
    {
        var fields = await GatewayFields.ReadAsync(request, cancellation);
        Admit(fields, settings);
        if (!long.TryParse(fields.Text("reply"), NumberStyles.None, CultureInfo.InvariantCulture, out var reply)
            || !int.TryParse(fields.Text("attempt"), NumberStyles.None, CultureInfo.InvariantCulture, out var attempt))
        {
            throw new RequestRefused("reply, attempt: the numbers that were sent along with the reply.");
        }

        await deliverer.ReportAsync(reply, attempt, Kind(fields.Text("type")), cancellation);
        return Results.Ok();
    }

    // Kannel's user guide, delivery reports: 1 delivered, 2 not delivered, 4 queued, 8 taken by the centre, 16 refused by the centre.
    private static DeliveryReport Kind(string type) => type switch
    {
        "1" => DeliveryReport.Arrived,
        "4" or "8" => DeliveryReport.OnItsWay,
        "2" or "16" => DeliveryReport.Failed,
        _ => throw new RequestRefused("type: 1, 2, 4, 8 or 16."),
    };

    private static void Admit(GatewayFields fields, TextSettings settings)
    {
        if (!CryptographicOperations.FixedTimeEquals(Digest(fields.Text("key")), Digest(settings.Secret)))
        {
            throw new RequestRefused("key: it is not the gateway's.", StatusCodes.Status403Forbidden);
        }
    }

    private static byte[] Digest(string secret) => SHA256.HashData(Encoding.UTF8.GetBytes(secret));

    private static string Needed(GatewayFields fields, string name, int longest) => fields.Text(name) switch
    {
        "" => throw new RequestRefused($"{name}: it is missing."),
        var text when text.Length > longest || text.Any(char.IsControl) => throw new RequestRefused($"{name}: {longest} characters at most, none of them a control character."),
        var text => text,
    };

    private static DateTimeOffset? Time(string text) =>
        long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var seconds) && seconds < 253402300800 ? DateTimeOffset.FromUnixTimeSeconds(seconds)
        : DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at) ? at
        : null;

    private sealed record BodyLimit(long? MaxRequestBodySize) : IRequestSizeLimitMetadata;
}
