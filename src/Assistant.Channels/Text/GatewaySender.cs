using System.Globalization;
using System.Net;
using Assistant.Dialogue.Replies;
using Assistant.Records.Outbox;

namespace Assistant.Channels.Text;

/// <summary>Gives replies to an SMS gateway by its send address.</summary>
public sealed class GatewaySender(HttpClient http, TextSettings settings, PhraseBook book, ITextPeople people) : IReplySender
{
    private readonly TextShape shape = new(book);

    public string Channel => TextSettings.Channel;

    public async Task<Sent> SendAsync(OutboxItem item, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(item);
        if (await ForbiddenAsync(item, cancellation) is { } why)
        {
            return new Refused(why);
        }

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

    // STOP and a lost phone hold for whatever is still under way; what is said to a stranger or of the STOP itself goes out.
    private async Task<string?> ForbiddenAsync(OutboxItem item, CancellationToken cancellation)
    {
        var key = item.Reply.Parts is [var only] ? only.Key : "";
        return key == "text.stopped" ? null
            : await people.IsStoppedAsync(item.Conversation, cancellation) ? "the number asked for no messages"
            : key is "text.stranger" or "text.code-refused" || await people.NameOfAsync(item.Conversation, cancellation) is not null ? null
            : "the number speaks for nobody";
    }

    private Uri Address(OutboxItem item, string text) => new(settings.SendUrl
        .Replace("{to}", Uri.EscapeDataString(item.Conversation), StringComparison.Ordinal)
        .Replace("{text}", Uri.EscapeDataString(text), StringComparison.Ordinal)
        .Replace("{report}", Uri.EscapeDataString(Report(item)), StringComparison.Ordinal));

    private string Report(OutboxItem item) => settings.ReportUrl is not { } url
        ? ""
        : string.Create(CultureInfo.InvariantCulture, $"{url}{(url.Contains('?', StringComparison.Ordinal) ? '&' : '?')}reply={item.Id}&attempt={item.Attempts + 1}");
}
