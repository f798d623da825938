using System.Collections.Concurrent;
using System.Xml.Linq;
using Assistant.Channels.Xmpp.Wire;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Xmpp.Muc;

/// <summary>Keeps our seats in the rooms: enters them, asks for what was said meanwhile, enters again after trouble, and looks now and then whether we are still in.</summary>
internal sealed partial class RoomKeeper(XmppSettings settings, RoomPlaces places, XmppPace pace, TimeProvider clock, ILogger logger)
{
    /// <summary>A room that does not say that its history is over.</summary>
    private static readonly TimeSpan LongestHistory = TimeSpan.FromSeconds(30);

    /// <summary>How often a room is asked whether we are still in it (XEP-0410).</summary>
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMinutes(5);

    private readonly ConcurrentDictionary<Jid, RoomSeat> seats = new(settings.Rooms.Distinct().Select(r => KeyValuePair.Create(r, new RoomSeat(r, settings.Nick))));
    private readonly ConcurrentDictionary<Jid, DateTimeOffset> returns = new();
    private readonly ConcurrentDictionary<Jid, DateTimeOffset> looked = new();
    private int queries;

    public RoomSeat? Seat(Jid room) => seats.GetValueOrDefault(room);

    public async Task EnterAllAsync(ComponentStream stream, CancellationToken cancellation)
    {
        returns.Clear();
        await places.ReadAsync(cancellation);
        foreach (var seat in seats.Values)
        {
            await EnterAsync(stream, seat, cancellation);
        }
    }

    /// <summary>Tells the rooms that we go, as far as the line still carries.</summary>
    public async Task GoAsync(ComponentStream stream)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(1), clock);
        try
        {
            foreach (var seat in seats.Values.Where(s => s.IsIn))
            {
                await stream.SendAsync(Stanzas.Presence(settings.Seat, seat.Own, "unavailable"), patience.Token);
            }
        }
        catch (Exception gone) when (gone is StreamBrokenException or OperationCanceledException)
        {
            // The rooms find it out by themselves.
        }
    }

    /// <summary>The stream is gone, and we are in no room.</summary>
    public void Leave()
    {
        foreach (var seat in seats.Values)
        {
            seat.Begin();
        }
    }

    /// <summary>Takes a presence of a room.</summary>
    public async Task TakeAsync(ComponentStream stream, RoomSeat seat, XElement presence, CancellationToken cancellation)
    {
        switch (seat.Take(presence))
        {
            case Entered entered:
                await places.BeginAsync(seat.Room, clock.GetUtcNow(), cancellation);
                looked[seat.Room] = clock.GetUtcNow();
                IsInNow(logger, seat.Room, seat.Nick);
                if (!seat.ShowsAccounts)
                {
                    Hidden(logger, seat.Room, settings.Self);
                }

                if (entered.IsNew)
                {
                    await stream.SendAsync(Stanzas.TakeAsItIs(settings.Seat, seat.Room, Id("take-")), cancellation);
                }

                break;
            case NickTaken when seat.TakeAnotherNick():
                await EnterAsync(stream, seat, cancellation);
                break;
            case NickTaken:
                Later(seat, "all names are taken");
                break;
            case NotLetIn refused:
                Later(seat, refused.Trouble);
                break;
            case PutOut { MayReturn: true } lost:
                Later(seat, lost.Trouble);
                break;
            case PutOut lost:
                OutForGood(logger, seat.Room, lost.Trouble);
                break;
        }
    }

    /// <summary>Takes a refusal of something we asked or said: a room that has forgotten us without a word is entered again.</summary>
    public async Task TakeRefusalAsync(ComponentStream stream, XElement refusal, CancellationToken cancellation)
    {
        if (Jid.TryParse((string?)refusal.Attribute("from"), out var from) && Seat(from.Bare) is { IsIn: true } seat
            && refusal.Descendants(XmppNames.StanzaErrors + "not-acceptable").Any())
        {
            await EnterAsync(stream, seat, cancellation);
        }
    }

    /// <summary>What is due.</summary>
    /// <param name="isQuiet">True where nothing came in for a while: the server is asked for a sign of life.</param>
    public async Task LookAfterAsync(ComponentStream stream, bool isQuiet, CancellationToken cancellation)
    {
        var now = clock.GetUtcNow();
        if (isQuiet)
        {
            await stream.SendAsync(Stanzas.Ping(settings.Self, settings.Self, Id("alive-")), cancellation);
        }

        foreach (var seat in seats.Values)
        {
            if (returns.TryGetValue(seat.Room, out var due) && due <= now && returns.TryRemove(seat.Room, out _))
            {
                await EnterAsync(stream, seat, cancellation);
            }
            else if (seat.IsIn && now - looked.GetValueOrDefault(seat.Room) is var ago)
            {
                if (ago > LongestHistory)
                {
                    seat.CatchUp();
                }

                if (ago > BetweenLooks)
                {
                    looked[seat.Room] = now;
                    await stream.SendAsync(Stanzas.Ping(settings.Seat, seat.Own, Id("look-")), cancellation);
                }
            }
        }
    }

    private Task EnterAsync(ComponentStream stream, RoomSeat seat, CancellationToken cancellation)
    {
        seat.Begin();
        return stream.SendAsync(Stanzas.Enter(settings.Seat, seat.Own, places.Since(seat.Room)), cancellation);
    }

    private void Later(RoomSeat seat, string trouble)
    {
        returns[seat.Room] = clock.GetUtcNow() + pace.BeforeReturn;
        OutForNow(logger, seat.Room, trouble, pace.BeforeReturn.TotalSeconds);
    }

    private string Id(string mark) => $"{mark}{Interlocked.Increment(ref queries)}";

    [LoggerMessage(LogLevel.Information, "Chat: in {Room} as {Nick}")]
    private static partial void IsInNow(ILogger logger, Jid room, string nick);

    [LoggerMessage(LogLevel.Warning, "Chat: {Room} hides who is who. Set it to show real addresses to everyone, or nobody in it is known; a code is written to {Self} directly.")]
    private static partial void Hidden(ILogger logger, Jid room, Jid self);

    [LoggerMessage(LogLevel.Warning, "Chat: not in {Room}: {Trouble}. Tried again in {Seconds:0.#} s.")]
    private static partial void OutForNow(ILogger logger, Jid room, string trouble, double seconds);

    [LoggerMessage(LogLevel.Warning, "Chat: no longer in {Room}: {Trouble}. It stays out until it is started again.")]
    private static partial void OutForGood(ILogger logger, Jid room, string trouble);
}
