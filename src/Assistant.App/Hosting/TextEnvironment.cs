using Assistant.App.Commands;
using Assistant.Channels.Text;

namespace Assistant.App.Hosting;

/// <summary>The SMS gateway from the environment; without one there is no text-message channel.</summary>
internal static class TextEnvironment
{
    private const string SendUrl = "COLDWALK_TEXT_SEND_URL";
    private const string Page = "COLDWALK_PAGE_URL";
    private const string Secret = "COLDWALK_TEXT_SECRET";

    /// <exception cref="CommandFailure">The settings are not whole.</exception>
    public static TextSettings? Read()
    {
        var send = Named(SendUrl);
        if (send.Length == 0)
        {
            return null;
        }

        if (!send.Contains("{to}", StringComparison.Ordinal) || !send.Contains("{text}", StringComparison.Ordinal) || !Uri.TryCreate(send, UriKind.Absolute, out var uri)
            || uri.Scheme is not ("http" or "https"))
        {
            throw new CommandFailure($"{SendUrl}: an http or https address with {{to}} and {{text}} in it is wanted.");
        }

        if (Named(Secret).Length < 12)
        {
            throw new CommandFailure($"{Secret}: the secret that the gateway calls with, 12 characters or more.");
        }

        PageAddress();
        return new(Named(Secret), send, Named("COLDWALK_TEXT_REPORT_URL") is { Length: > 0 } report ? report : null, Named("COLDWALK_TEXT_PICTURE_URL") is { Length: > 0 } picture ? picture : null);
    }

    /// <summary>Where people reach the page, or null where it is not said.</summary>
    /// <exception cref="CommandFailure">It is no address.</exception>
    public static Uri? PageAddress() => Named(Page) switch
    {
        "" => null,
        var text when Uri.TryCreate(text, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https" => uri,
        _ => throw new CommandFailure($"{Page}: where people reach the page is wanted, such as https://coldwalk.example."),
    };

    private static string Named(string name) => Secrets.Read(name);
}
