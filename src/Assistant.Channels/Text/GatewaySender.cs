using System.Globalization;
using System.Net;
using Assistant.Dialogue.Replies;
using Assistant.Records.Outbox;

namespace Assistant.Channels.Text;

/// <summary>Gives replies to an SMS gateway by its send address.</summary>
public sealed class GatewaySender(HttpClient http, TextSettings settings, PhraseBook book) : IReplySender
{
    private readonly TextShape shape = new(book);

    public string Channel => TextSettings.Channel;

    public async Task<Sent> SendAsync(OutboxItem item, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(item);
        var text = shape.Of(item.Reply);
        if (text.Length == 0)
        {
            return new HandedOver();
        }

        try
        {
            using var answer = await http.GetAsync(Address(item, text), cancellation);
            return answer.StatusCode switch
            {
                _ when answer.IsSuccessStatusCode => new HandedOver(),
                HttpStatusCode.BadRequest => new Refused("the gateway refused it (400)"),
                var status => new NotSent(string.Create(CultureInfo.InvariantCulture, $"the gateway answered {(int)status}")),
            };
        }
        catch (HttpRequestException failure) when (failure.HttpRequestError is HttpRequestError.ConnectionError or HttpRequestError.NameResolutionError or HttpRequestError.SecureConnectionError)
        {
            return new NotSent("the gateway can not be reached");
        }
        catch (Exception failure) when (failure is HttpRequestException or IOException || (failure is OperationCanceledException && !cancellation.IsCancellationRequested))
        {
            return new InDoubt("the line to the gateway broke before it answered");
        }
    }

    private Uri Address(OutboxItem item, string text) => new(settings.SendUrl
        .Replace("{to}", Uri.EscapeDataString(item.Conversation), StringComparison.Ordinal)
        .Replace("{text}", Uri.EscapeDataString(text), StringComparison.Ordinal)
        .Replace("{report}", Uri.EscapeDataString(Report(item)), StringComparison.Ordinal));

    private string Report(OutboxItem item) => settings.ReportUrl is not { } url
        ? ""
        : string.Create(CultureInfo.InvariantCulture, $"{url}{(url.Contains('?', StringComparison.Ordinal) ? '&' : '?')}reply={item.Id}&attempt={item.Attempts + 1}");
}
