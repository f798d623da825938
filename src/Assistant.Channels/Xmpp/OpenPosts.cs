using System.Collections.Concurrent;
using System.Xml.Linq;
using Assistant.Channels.Xmpp.Muc;
using Assistant.Channels.Xmpp.Wire;

namespace Assistant.Channels.Xmpp;

/// <summary>
/// What was sent and waits to be known as there: a post in a room is, once the room has sent it back; words to a person are, once the
/// server has answered a ping behind them.
/// </summary>
internal sealed class OpenPosts(XmppSettings settings, RoomKeeper keeper, TimeProvider clock)
{
    private const int MostSeen = 5000;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    private readonly ConcurrentDictionary<string, TaskCompletionSource<PostEnd>> pending = new(StringComparer.Ordinal);
    private readonly SeenPosts seen = new(MostSeen);
    private int pings;

    /// <summary>Posts in a room.</summary>
    public Task<PostEnd> PostAsync(ComponentStream stream, Jid room, string id, string text, CancellationToken cancellation) =>
        SendAsync(stream, Stanzas.Message(settings.Seat, room, isRoom: true, id, text), KeyOf(room, id), null, cancellation);

    /// <summary>Writes to one person.</summary>
    public async Task<PostEnd> WriteAsync(ComponentStream stream, Jid account, string id, string text, CancellationToken cancellation)
    {
        // The server takes a stream's stanzas in their order: once it sends back what we ask ourselves behind it, it has the message.
        var ping = $"after-{Interlocked.Increment(ref pings)}";
        var message = Stanzas.Message(settings.Self, account, isRoom: false, id, text);
        return await SendAsync(stream, message, ping, Stanzas.Ping(settings.Self, settings.Self, ping), cancellation);
    }

    /// <summary>True where the room has sent that post back.</summary>
    public bool IsThere(Jid room, string id) => seen.Has(room, id);

    /// <summary>A post of ours came back, with the history or at once.</summary>
    public void Saw(Jid room, string id) => seen.Add(room, id);

    /// <summary>The line is gone: how these ended nobody knows.</summary>
    public void Break()
    {
        foreach (var waiting in pending.Values)
        {
            waiting.TrySetResult(PostEnd.Unknown);
        }
    }

    /// <summary>Settles what a stanza answers. At once, not in its turn: whoever waits for it may be what holds up the turn.</summary>
    public void Settle(XElement stanza)
    {
        var id = (string?)stanza.Attribute("id") ?? "";
        var type = (string?)stanza.Attribute("type");
        if (!Jid.TryParse((string?)stanza.Attribute("from"), out var from) || id.Length == 0)
        {
            return;
        }

        if (stanza.Name.LocalName == "iq" && from == settings.Self && pending.TryGetValue(id, out var ping))
        {
            ping.TrySetResult(PostEnd.There);
        }
        else if (stanza.Name.LocalName == "message" && keeper.Seat(from.Bare) is { } seat)
        {
            if (type == "error" && pending.TryGetValue(KeyOf(from.Bare, id), out var refused))
            {
                refused.TrySetResult(PostEnd.Refused);
            }
            else if (type == "groupchat" && from.Resource is { } nick && RoomMessageReader.IsOwn(stanza, seat, nick))
            {
                seen.Add(from.Bare, id);
                if (pending.TryGetValue(KeyOf(from.Bare, id), out var posted))
                {
                    posted.TrySetResult(PostEnd.There);
                }
            }
        }
    }

    private async Task<PostEnd> SendAsync(ComponentStream stream, XElement stanza, string key, XElement? behind, CancellationToken cancellation)
    {
        var waiting = pending.GetOrAdd(key, _ => new(TaskCreationOptions.RunContinuationsAsynchronously));
        try
        {
            await stream.SendAsync(stanza, cancellation);
            if (behind is not null)
            {
                await stream.SendAsync(behind, cancellation);
            }

            return await waiting.Task.WaitAsync(Patience, clock, cancellation);
        }
        catch (Exception unsure) when (unsure is TimeoutException or StreamBrokenException)
        {
            return PostEnd.Unknown;
        }
        finally
        {
            pending.TryRemove(key, out _);
        }
    }

    private static string KeyOf(Jid room, string id) => $"{room} {id}";
}
