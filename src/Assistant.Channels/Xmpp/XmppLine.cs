using System.Threading.Channels;
using System.Xml.Linq;
using Assistant.Channels.Xmpp.Muc;
using Assistant.Channels.Xmpp.Wire;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Xmpp;

/// <summary>The line to the server while a stream is open: sits in the rooms, hands on what is said in its order, and posts.</summary>
internal sealed class XmppLine
{
    private const int MostWaiting = 5000;

    private readonly RoomKeeper keeper;
    private readonly OpenPosts posts;
    private readonly StanzaTaker taker;
    private readonly XmppPace pace;
    private readonly TimeProvider clock;
    private ComponentStream? open;
    private DateTimeOffset lastHeard;

    public XmppLine(XmppSettings settings, RoomPlaces places, IXmppTalk talk, XmppPace pace, TimeProvider clock, ILogger logger)
    {
        (this.pace, this.clock) = (pace, clock);
        keeper = new(settings, places, pace, clock, logger);
        posts = new(settings, keeper, clock);
        taker = new(settings, places, keeper, posts, talk, clock, logger);
    }

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
        var taking = taker.TakeAllAsync(stream, stanzas.Reader, stopping);
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
            posts.Break();

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

    /// <summary>Posts in a room.</summary>
    /// <param name="id">The post's own id: the same one again is not posted twice.</param>
    public async Task<PostEnd> PostAsync(Jid room, string id, string text, CancellationToken cancellation) =>
        posts.IsThere(room, id) ? PostEnd.There
        : open is { } stream && keeper.Seat(room) is { IsCaughtUp: true } ? await posts.PostAsync(stream, room, id, text, cancellation)
        : PostEnd.NotThere;

    /// <summary>Writes to one person.</summary>
    public async Task<PostEnd> WriteAsync(Jid account, string id, string text, CancellationToken cancellation) =>
        open is { } stream ? await posts.WriteAsync(stream, account, id, text, cancellation) : PostEnd.NotThere;

    private async Task ListenAsync(ComponentStream stream, ChannelWriter<XElement> stanzas, CancellationToken cancellation)
    {
        while (await stream.ReadAsync().WaitAsync(cancellation) is { } stanza)
        {
            lastHeard = clock.GetUtcNow();
            posts.Settle(stanza);
            await stanzas.WriteAsync(stanza, cancellation);
        }

        throw new StreamBrokenException(null, "the server ended the stream");
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
}
