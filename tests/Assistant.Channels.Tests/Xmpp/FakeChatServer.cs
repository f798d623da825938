using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Threading.Channels;
using System.Xml;
using System.Xml.Linq;

namespace Assistant.Channels.Tests.Xmpp;

/// <summary>The server's end of a component's stream on a free loopback port, said word by word by the test.</summary>
internal sealed class FakeChatServer : IDisposable
{
    public const string StreamId = "3BF96D32";

    private const string Header = $"<?xml version='1.0'?><stream:stream xmlns='jabber:component:accept' xmlns:stream='http://etherx.jabber.org/streams' from='coldwalk.chat.example' id='{StreamId}'>";

    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly Channel<XElement> came = Channel.CreateUnbounded<XElement>();
    private TcpClient? client;

    public FakeChatServer() => listener.Start();

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    /// <summary>True for one that gives no sign of life.</summary>
    public bool IsSilent { get; set; }

    /// <summary>Takes the next connection and reads its handshake.</summary>
    public async Task<string> TakeAsync()
    {
        client?.Dispose();
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(20));
        client = await listener.AcceptTcpClientAsync(patience.Token);
        var wire = client.GetStream();
        var reader = XmlReader.Create(wire);
        var opened = new TaskCompletionSource();
        new Thread(() => Listen(reader, opened)) { IsBackground = true }.Start();
        await opened.Task.WaitAsync(patience.Token);
        Write(Header);
        return (await NextAsync("handshake")).Value;
    }

    /// <summary>Takes the next connection and lets it in.</summary>
    public async Task LetInAsync()
    {
        await TakeAsync();
        Write("<handshake/>");
    }

    public void Write(string xml) => client!.GetStream().Write(Encoding.UTF8.GetBytes(xml));

    /// <summary>Sends a stanza, its usual namespaces put in.</summary>
    public void Send(string stanza) => Write(Stanza.Namespaced(stanza));

    /// <summary>The next element of that name that the component sent.</summary>
    public async Task<XElement> NextAsync(string name)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(20));
        while (true)
        {
            if (await came.Reader.ReadAsync(patience.Token) is var element && element.Name.LocalName == name)
            {
                return element;
            }
        }
    }

    public void Dispose()
    {
        client?.Dispose();
        listener.Stop();
    }

    // A server sends back to us what we ask ourselves.
    private void Take(XElement element)
    {
        if (((string?)element.Attribute("id"))?.StartsWith("alive-", StringComparison.Ordinal) != true)
        {
            came.Writer.TryWrite(element);
        }
        else if (!IsSilent)
        {
            Send($"<iq type='result' id='{element.Attribute("id")!.Value}' from='{element.Attribute("to")!.Value}' to='{element.Attribute("from")!.Value}'/>");
        }
    }

    private void Listen(XmlReader reader, TaskCompletionSource opened)
    {
        try
        {
            while (reader.Read())
            {
                if (reader is { NodeType: XmlNodeType.Element, Depth: 0 })
                {
                    opened.TrySetResult();
                }
                else if (reader is { NodeType: XmlNodeType.Element, Depth: 1 })
                {
                    using var stanza = reader.ReadSubtree();
                    Take(XElement.Load(stanza));
                }
            }
        }
        catch (Exception end) when (end is IOException or XmlException or ObjectDisposedException or InvalidOperationException)
        {
            // The component or the test has ended it.
        }
    }
}
