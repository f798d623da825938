using System.Collections.Concurrent;
using System.Threading.Channels;
using System.Xml.Linq;
using Assistant.Channels.Xmpp.Muc;
using Assistant.Channels.Xmpp.Wire;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Xmpp;

/// <summary>
/// The line to the server while a stream is open: sits in the rooms, hands on what is said in its order, and posts. What it posts in a
/// room is certain once the room has sent it back; what it writes to a person, once the server has answered a ping behind it.
/// </summary>
internal sealed partial class XmppLine(XmppSettings settings, RoomPlaces places, IXmppTalk talk, XmppPace pace, TimeProvider clock, ILogger logger)
{
    private const int MostWaiting = 5000;
    private const int MostSeen = 5000;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan AfterFailure = TimeSpan.FromSeconds(5);

    private readonly ConcurrentDictionary<string, TaskCompletionSource<PostEnd>> pending = new(StringComparer.Ordinal);
    private readonly SeenPosts seen = new(MostSeen);
    private readonly RoomKeeper keeper = new(settings, places, pace, clock, logger);
    private ComponentStream? open;
    private DateTimeOffset lastHeard;
    private int pings;

    /// <summary>True while there is a stream.</summary>
    public bool IsUp => open is not null;

    /// <summary>Lives on one stream until it ends.</summary>
    /// <exception cref="StreamBrokenException">Why it ended.</exception>
    public async Task LiveAsync(ComponentStream stream, CancellationToken stopping)
    {
        using var end = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        var stanzas = Channel.CreateBounded<XElement>(MostWaiting);
        lastHeard = clock.GetUtcNow();
        open = stream;
        var taking = TakeAllAsync(stream, stanzas.Reader, stopping);
        var listening = ListenAsync(stream, stanzas.Writer, end.Token);
        var beating = BeatAsync(stream, end.Token);
        try
        {
            await keeper.EnterAllAsync(stream, end.Token);
            await await Task.WhenAny(listening, beating);
        }
        finally
        {
            open = null;
            foreach (var waiting in pending.Values)
            {
                waiting.TrySetResult(PostEnd.Unknown);
            }

            // What came in before the line broke is dealt with: what was written to us directly does not come again.
            stanzas.Writer.TryComplete();
            await taking.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            await end.CancelAsync();
            await Task.WhenAll(listening, beating).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            if (stopping.IsCancellationRequested)
            {
                await keeper.GoAsync(stream);
            }

            keeper.Leave();
        }
    }

    /// <summary>Posts in a room, or puts other words in the place of what was posted there.</summary>
    /// <param name="id">The post's own id: the same one again is not posted twice.</param>
    public async Task<PostEnd> PostAsync(Jid room, string id, string text, string? corrects, CancellationToken cancellation)
    {
        if (seen.Has(room, id))
        {
            return PostEnd.There;
        }

        return open is { } stream && keeper.Seat(room) is { IsCaughtUp: true }
            ? await SendAsync(stream, Stanzas.Message(settings.Seat, room, isRoom: true, id, text, corrects), KeyOf(room, id), null, cancellation)
            : PostEnd.NotThere;
    }

    /// <summary>Writes to one person.</summary>
    public async Task<PostEnd> WriteAsync(Jid account, string id, string text, CancellationToken cancellation)
    {
        if (open is not { } stream)
        {
            return PostEnd.NotThere;
        }

        // The server takes a stream's stanzas in their order: once it sends back what we ask ourselves behind it, it has the message.
        var ping = $"after-{Interlocked.Increment(ref pings)}";
        var message = Stanzas.Message(settings.Self, account, isRoom: false, id, text);
        return await SendAsync(stream, message, ping, Stanzas.Ping(settings.Self, settings.Self, ping), cancellation);
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

    private async Task ListenAsync(ComponentStream stream, ChannelWriter<XElement> stanzas, CancellationToken cancellation)
    {
        while (await stream.ReadAsync().WaitAsync(cancellation) is { } stanza)
        {
            lastHeard = clock.GetUtcNow();
            Settle(stanza);
            await stanzas.WriteAsync(stanza, cancellation);
        }

        throw new StreamBrokenException(null, "the server ended the stream");
    }

    // At once, not in their turn: whoever waits for it may be what holds up the turn.
    private void Settle(XElement stanza)
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

    private async Task TakeAllAsync(ComponentStream stream, ChannelReader<XElement> stanzas, CancellationToken cancellation)
    {
        await foreach (var stanza in stanzas.ReadAllAsync(cancellation))
        {
            try
            {
                await TakeAsync(stream, stanza, cancellation);
            }
            catch (StreamBrokenException)
            {
                // The answer to it does not get out any more. Whoever listens has seen it, too.
            }
            catch (Exception failure) when (failure is not (OperationCanceledException or OutOfMemoryException))
            {
                // One stanza that can not be taken must not hold up all that come after it.
                NotTaken(logger, stanza.Name.LocalName, failure);
            }
        }
    }

    private async Task TakeAsync(ComponentStream stream, XElement stanza, CancellationToken cancellation)
    {
        var from = Jid.TryParse((string?)stanza.Attribute("from"), out var sender) ? sender : null;
        var type = (string?)stanza.Attribute("type");
        switch (stanza.Name.LocalName)
        {
            case "iq":
                if (QueryAnswers.To(stanza, settings) is { } answer)
                {
                    await stream.SendAsync(answer, cancellation);
                }

                if (type == "error")
                {
                    await keeper.TakeRefusalAsync(stream, stanza, cancellation);
                }

                break;
            case "presence" when from is not null && keeper.Seat(from.Bare) is { } seat:
                await keeper.TakeAsync(stream, seat, stanza, cancellation);
                break;
            case "presence" when from is not null && type == "subscribe":
                // Whoever wants to see whether it is there may.
                await stream.SendAsync(Stanzas.Presence(settings.Self, from.Bare, "subscribed"), cancellation);
                await stream.SendAsync(Stanzas.Presence(settings.Self, from.Bare, null), cancellation);
                break;
            case "message" when from is not null && keeper.Seat(from.Bare) is { } seat:
                await InRoomAsync(stream, seat, from, stanza, type, cancellation);
                break;
            case "message" when from is not null && type is null or "chat" or "normal":
                await DirectAsync(stream, from!, stanza, cancellation);
                break;
        }
    }

    private async Task InRoomAsync(ComponentStream stream, RoomSeat seat, Jid from, XElement message, string? type, CancellationToken cancellation)
    {
        if (type == "error")
        {
            await keeper.TakeRefusalAsync(stream, message, cancellation);
            return;
        }

        if (type != "groupchat")
        {
            if (message.Element(XmppNames.Component + "body") is not null)
            {
                // Whispered in a room: who it is may be hidden, and the others would not know what was said.
                await stream.SendAsync(Stanzas.Refusal(message, "not-acceptable"), cancellation);
            }

            return;
        }

        if (message.Element(XmppNames.Component + "body") is null && message.Element(XmppNames.Component + "subject") is not null)
        {
            seat.CatchUp();
        }
        else if (from.Resource is { } nick && RoomMessageReader.IsOwn(message, seat, nick))
        {
            var id = (string?)message.Attribute("id") ?? "";
            seen.Add(seat.Room, id);
            await UntilStoredAsync(() => talk.PostedAsync(seat.Room, id, cancellation), cancellation);
        }
        else if (RoomMessageReader.Read(message, seat, clock.GetUtcNow()) is { } words && !places.Knows(words))
        {
            await UntilStoredAsync(() => talk.HearAsync(words, cancellation), cancellation);
            await places.PassAsync(words, cancellation);
        }
    }

    private async Task DirectAsync(ComponentStream stream, Jid from, XElement message, CancellationToken cancellation)
    {
        if (!Jid.TryParse((string?)message.Attribute("to"), out var to) || to.Bare != settings.Self)
        {
            await stream.SendAsync(Stanzas.Refusal(message, "item-not-found"), cancellation);
        }
        else if (((string?)message.Element(XmppNames.Component + "body"))?.Trim() is { Length: > 0 } body && from.Local is not null)
        {
            // Some programs count their messages, and begin anew: only a long id says that it is the same message again.
            var id = (string?)message.Attribute("id") is { Length: >= 8 and <= 200 } given ? $"{from.Bare} {given}" : Guid.NewGuid().ToString("N");
            var words = new DirectWords(id, from.Bare, clock.GetUtcNow(), body.Length <= XmppSettings.LongestText ? body : body[..XmppSettings.LongestText]);
            await UntilStoredAsync(() => talk.HearAsync(words, cancellation), cancellation);
            if (Stanzas.Receipt(message) is { } receipt)
            {
                await stream.SendAsync(receipt, cancellation);
            }
        }
    }

    // What was said waits for the records, and all that was said after it.
    private async Task UntilStoredAsync(Func<Task> hear, CancellationToken cancellation)
    {
        while (true)
        {
            try
            {
                await hear();
                return;
            }
            catch (Records.Storage.RecordsException busy)
            {
                Waits(logger, busy.Message);
                await Task.Delay(AfterFailure, clock, cancellation);
            }
        }
    }

    private async Task BeatAsync(ComponentStream stream, CancellationToken cancellation)
    {
        using var timer = new PeriodicTimer(pace.Beat, clock);
        while (await timer.WaitForNextTickAsync(cancellation))
        {
            var silence = clock.GetUtcNow() - lastHeard;
            if (silence > 4 * pace.Beat)
            {
                throw new StreamBrokenException("connection-timeout", "the server has fallen silent");
            }

            await keeper.LookAfterAsync(stream, isQuiet: silence > pace.Beat, cancellation);
        }
    }

    private static string KeyOf(Jid room, string id) => $"{room} {id}";

    [LoggerMessage(LogLevel.Error, "Chat: a <{Kind}> could not be taken")]
    private static partial void NotTaken(ILogger logger, string kind, Exception failure);

    [LoggerMessage(LogLevel.Error, "Chat: what was said waits: {Message}")]
    private static partial void Waits(ILogger logger, string message);
}
