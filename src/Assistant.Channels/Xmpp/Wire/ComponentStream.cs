using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace Assistant.Channels.Xmpp.Wire;

/// <summary>One stream of an external component to its server (XEP-0114), from the handshake on. Many may write, one reads.</summary>
internal sealed class ComponentStream : IAsyncDisposable
{
    /// <summary>A server on the same machine or in the same house answers within this.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly TcpClient client;
    private readonly NetworkStream wire;
    private readonly StanzaReader reader;
    private readonly SemaphoreSlim writing = new(1, 1);

    private ComponentStream(TcpClient client) => (this.client, wire, reader) = (client, client.GetStream(), new(client.GetStream()));

    /// <summary>How many stanzas were left out because they were too large or too deep.</summary>
    public int LeftOut => reader.LeftOut;

    /// <summary>Connects and proves who it is.</summary>
    /// <exception cref="StreamBrokenException">The server is not there, or refuses.</exception>
    public static async Task<ComponentStream> OpenAsync(XmppSettings settings, CancellationToken cancellation)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        patience.CancelAfter(Patience);
        var client = new TcpClient { NoDelay = true };
        try
        {
            await client.ConnectAsync(settings.Server, settings.Port, patience.Token);
            var stream = new ComponentStream(client);
            try
            {
                await stream.ProveAsync(settings).WaitAsync(patience.Token);
                return stream;
            }
            catch
            {
                await stream.DisposeAsync();
                throw;
            }
        }
        catch (Exception failure) when (failure is SocketException or IOException)
        {
            client.Dispose();
            throw new StreamBrokenException(null, $"{settings.Server}:{settings.Port} can not be reached ({failure.Message.TrimEnd('.')})", failure);
        }
        catch (OperationCanceledException late) when (!cancellation.IsCancellationRequested)
        {
            client.Dispose();
            throw new StreamBrokenException(null, $"{settings.Server}:{settings.Port} does not answer", late);
        }
    }

    /// <summary>The next stanza, or null where the server ended the stream.</summary>
    /// <exception cref="StreamBrokenException">The stream can not go on.</exception>
    public async Task<XElement?> ReadAsync()
    {
        try
        {
            var stanza = await reader.ReadAsync();
            return stanza?.Name == XmppNames.Stream + "error" ? throw Ended(stanza) : stanza;
        }
        catch (Exception gone) when (gone is IOException or ObjectDisposedException or SocketException)
        {
            throw new StreamBrokenException(null, "the line to the server broke", gone);
        }
    }

    /// <summary>Hands a stanza to the network.</summary>
    /// <exception cref="StreamBrokenException">The line is gone.</exception>
    public Task SendAsync(XElement stanza, CancellationToken cancellation) => WriteAsync(Text(stanza), cancellation);

    /// <summary>Tells the server why the stream ends, and ends it.</summary>
    public async Task CloseAsync(string? condition)
    {
        var reason = condition is null ? "" : $"<stream:error><{condition} xmlns='{XmppNames.StreamErrors}'/></stream:error>";
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(1));
        try
        {
            await WriteAsync(reason + "</stream:stream>", patience.Token);
        }
        catch (Exception gone) when (gone is StreamBrokenException or OperationCanceledException)
        {
            // It has ended already.
        }
    }

    public ValueTask DisposeAsync()
    {
        // The reader is not disposed with a read under way: the socket's end ends that one.
        client.Dispose();
        writing.Dispose();
        return ValueTask.CompletedTask;
    }

    private async Task ProveAsync(XmppSettings settings)
    {
        await WriteAsync($"<stream:stream xmlns='{XmppNames.Component}' xmlns:stream='{XmppNames.Stream}' to='{settings.Domain}'>", default);
        var id = await reader.OpenAsync();
        await WriteAsync($"<handshake>{Proof(id, settings.Secret)}</handshake>", default);
        var answer = await ReadAsync() ?? throw new StreamBrokenException(null, "the server closed the stream within the handshake");
        if (answer.Name != XmppNames.Component + "handshake")
        {
            throw new StreamBrokenException("unsupported-stanza-type", $"the server answered the handshake with <{answer.Name.LocalName}>");
        }
    }

    /// <summary>XEP-0114, section 3: the SHA-1 of the stream's id and the secret, in lower-case hexadecimal.</summary>
#pragma warning disable CA5350 // The protocol knows no other digest.
    internal static string Proof(string streamId, string secret) => Convert.ToHexStringLower(SHA1.HashData(Utf8.GetBytes(streamId + secret)));
#pragma warning restore CA5350

    private static string Text(XElement stanza)
    {
        var text = new StringBuilder();
        using (var writer = XmlWriter.Create(text, new() { OmitXmlDeclaration = true, ConformanceLevel = ConformanceLevel.Fragment, CheckCharacters = true, NewLineHandling = NewLineHandling.None }))
        {
            stanza.WriteTo(writer);
        }

        return text.ToString();
    }

    private static StreamBrokenException Ended(XElement error)
    {
        var condition = error.Elements().FirstOrDefault(e => e.Name.Namespace == XmppNames.StreamErrors && e.Name.LocalName != "text")?.Name.LocalName ?? "undefined-condition";
        var text = (string?)error.Element(XmppNames.StreamErrors + "text");
        var meaning = condition switch
        {
            "not-authorized" => "the secret is not the one the server has for this component",
            "host-unknown" => "the server knows no component of this domain",
            "conflict" => "another program is connected as this component",
            _ => "the server ended the stream",
        };
        return new(null, $"{meaning} ({condition}{(text is null ? "" : ": " + text)})");
    }

    private async Task WriteAsync(string text, CancellationToken cancellation)
    {
        try
        {
            await writing.WaitAsync(cancellation);
            try
            {
                // A stanza half written would break the stream for all that follows.
                await wire.WriteAsync(Utf8.GetBytes(text), CancellationToken.None);
            }
            finally
            {
                writing.Release();
            }
        }
        catch (Exception gone) when (gone is IOException or ObjectDisposedException or SocketException)
        {
            throw new StreamBrokenException(null, "the line to the server broke", gone);
        }
    }
}
