using System.Collections.Concurrent;
using System.Net.Sockets;
using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace Assistant.EndToEnd.Tests.Rooms;

/// <summary>A person with a chat program: signs in, sits in a room, says and reads. As small as it can be.</summary>
internal sealed class ChatPerson : IDisposable
{
    private static readonly XNamespace Client = "jabber:client";
    private static readonly XNamespace Correction = "urn:xmpp:message-correct:0";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private readonly string name;
    private readonly TcpClient tcp;
    private readonly NetworkStream wire;
    private readonly BlockingCollection<XElement> came = [];
    private readonly ConcurrentQueue<Line> screen = new();
    private readonly ConcurrentDictionary<string, bool> present = new();
    private XmlReader? reader;
    private int sent;

    private ChatPerson(string name, int port)
    {
        (this.name, tcp) = (name, new("127.0.0.1", port) { NoDelay = true });
        wire = tcp.GetStream();
    }

    /// <summary>One line as the screen shows it.</summary>
    /// <param name="From">The nick in the room, or the address of who wrote directly.</param>
    /// <param name="Corrects">The id of the line that it stands for, or null.</param>
    public sealed record Line(string From, string Text, string Id, string? Corrects, bool IsOld);

    public IReadOnlyCollection<Line> Screen => screen;

    public string Address => $"{name}@{Prosody.Host}";

    public static ChatPerson SignIn(string name, int port)
    {
        var person = new ChatPerson(name, port);
        person.Open();
        person.Write($"<auth xmlns='urn:ietf:params:xml:ns:xmpp-sasl' mechanism='PLAIN'>{Convert.ToBase64String(Encoding.UTF8.GetBytes($"\0{name}\0{Prosody.Password}"))}</auth>");
        Assert.Equal("success", person.Next().Name.LocalName);
        person.Open();
        person.Write("<iq type='set' id='bind'><bind xmlns='urn:ietf:params:xml:ns:xmpp-bind'><resource>phone</resource></bind></iq>");
        Assert.Equal("result", (string?)person.Next().Attribute("type"));
        person.Write("<presence/>");
        new Thread(person.Listen) { IsBackground = true }.Start();
        return person;
    }

    /// <summary>Enters the room; makes it where it is not there.</summary>
    /// <param name="lines">How many lines of what was said before are wanted.</param>
    public async Task EnterAsync(string nick, int lines = 0, string room = Prosody.Room)
    {
        Write($"<presence to='{room}/{nick}'><x xmlns='http://jabber.org/protocol/muc'><history maxstanzas='{lines}'/></x></presence>");
        var own = await TakeAsync(s => s.Name == Client + "presence" && s.Descendants().Any(e => e.Name.LocalName == "status" && (string?)e.Attribute("code") == "110"));
        Assert.Null(own.Attribute("type"));
        if (own.Descendants().Any(e => (string?)e.Attribute("code") == "201"))
        {
            Write($"<iq type='set' id='make' to='{room}'><query xmlns='http://jabber.org/protocol/muc#owner'><x xmlns='jabber:x:data' type='submit'/></query></iq>");
            await TakeAsync(s => (string?)s.Attribute("id") == "make");
            return;
        }

        // The subject ends what was said before.
        await TakeAsync(s => s.Name == Client + "message" && s.Element(Client + "subject") is not null && s.Element(Client + "body") is null);
    }

    /// <summary>Waits until somebody is in the room.</summary>
    public async Task UntilInAsync(string nick)
    {
        for (var until = DateTimeOffset.UtcNow + Patience; !present.ContainsKey(nick); await Task.Delay(20))
        {
            Assert.True(DateTimeOffset.UtcNow < until, $"{name} did not see {nick} in the room.");
        }
    }

    public void Say(string text, string room = Prosody.Room) => Send(room, "groupchat", text);

    public void Tell(string account, string text) => Send(account, "chat", text);

    /// <summary>The room's owner sends somebody out.</summary>
    public void SendOut(string nick, string room = Prosody.Room) => Write(
        $"<iq type='set' id='out-{++sent}' to='{room}'><query xmlns='http://jabber.org/protocol/muc#admin'><item nick='{nick}' role='none'/></query></iq>");

    /// <summary>Sends what a chat program would not.</summary>
    public void Write(string xml) => wire.Write(Encoding.UTF8.GetBytes(xml));

    /// <summary>Waits for a line that was not there before.</summary>
    public async Task<Line> ReadAsync(Func<Line, bool> wanted, int from = 0)
    {
        for (var until = DateTimeOffset.UtcNow + Patience; ; await Task.Delay(20))
        {
            if (screen.Skip(from).FirstOrDefault(wanted) is { } line)
            {
                return line;
            }

            Assert.True(DateTimeOffset.UtcNow < until, $"{name} did not read it. On the screen: {string.Join(" | ", screen.Select(l => $"{l.From}: {l.Text}"))}");
        }
    }

    public void Dispose()
    {
        tcp.Dispose();
        came.Dispose();
    }

    private void Send(string to, string type, string text) =>
        Write(new XElement("message", new XAttribute("to", to), new XAttribute("type", type), new XAttribute("id", $"{name}-{Guid.NewGuid():N}"), new XElement("body", text)).ToString(SaveOptions.DisableFormatting));

    private void Open()
    {
        Write($"<stream:stream xmlns='jabber:client' xmlns:stream='http://etherx.jabber.org/streams' version='1.0' to='{Prosody.Host}'>");
        reader = XmlReader.Create(wire);
        Assert.Equal("features", Next().Name.LocalName);
    }

    private XElement Next()
    {
        while (reader!.Read())
        {
            if (reader is { NodeType: XmlNodeType.Element, Depth: 1 })
            {
                using var stanza = reader.ReadSubtree();
                return XElement.Load(stanza);
            }
        }

        throw new EndOfStreamException();
    }

    private async Task<XElement> TakeAsync(Func<XElement, bool> wanted)
    {
        for (var until = DateTimeOffset.UtcNow + Patience; ;)
        {
            if (came.TryTake(out var stanza))
            {
                if (wanted(stanza))
                {
                    return stanza;
                }
            }
            else
            {
                Assert.True(DateTimeOffset.UtcNow < until, $"{name} waited for a stanza that did not come.");
                await Task.Delay(20);
            }
        }
    }

    private void Listen()
    {
        try
        {
            while (true)
            {
                var stanza = Next();
                var sender = (string?)stanza.Attribute("from") ?? "";
                if (stanza.Name == Client + "presence" && sender.Contains('/', StringComparison.Ordinal))
                {
                    _ = stanza.Attribute("type") is null ? present.TryAdd(sender.Split('/')[1], true) : present.TryRemove(sender.Split('/')[1], out _);
                }

                if (stanza.Name == Client + "message" && stanza.Element(Client + "body") is { } body && (string?)stanza.Attribute("type") != "error")
                {
                    screen.Enqueue(new(
                        (string?)stanza.Attribute("type") == "groupchat" ? sender[(sender.IndexOf('/', StringComparison.Ordinal) + 1)..] : sender.Split('/')[0],
                        body.Value,
                        (string?)stanza.Attribute("id") ?? "",
                        (string?)stanza.Element(Correction + "replace")?.Attribute("id"),
                        stanza.Elements().Any(e => e.Name.LocalName == "delay")));
                }

                came.Add(stanza);
            }
        }
        catch (Exception end) when (end is IOException or XmlException or ObjectDisposedException or InvalidOperationException or EndOfStreamException)
        {
            // The server or the test has ended it.
        }
    }
}
