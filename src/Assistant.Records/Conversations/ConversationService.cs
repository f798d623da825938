using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.Storage;
using Assistant.Trade.Quantities;

namespace Assistant.Records.Conversations;

/// <summary>
/// Takes what people say and answers it. A reply is given only after all that led to it is on the disk; a message id that was
/// taken before is answered as it was then and changes nothing. One message of a visit at a time; different visits do not wait
/// for each other. Safe for use by many at once.
/// </summary>
public sealed class ConversationService : IDisposable
{
    private readonly EventLog log;
    private readonly ITurnEngine engine;
    private readonly ConversationOptions options;
    private readonly VisitOpener opener;
    private readonly VisitStates states;
    private readonly KeyedGate gate = new();

    public ConversationService(EventLog log, ITurnEngine engine, ConversationOptions? options = null)
    {
        this.log = log;
        this.engine = engine;
        this.options = options ?? new();
        opener = new(log, this.options);
        states = new(log, this.options.StatesKept);
    }

    /// <summary>Takes one message. Where its conversation is on no visit yet, or on one closed long ago, one opens first.</summary>
    /// <param name="outbox">True where the channel delivers the reply from the outbox: it is put there in the same commit.</param>
    /// <exception cref="RecordsException">Nothing was stored and the message is not taken: the channel says the message and may try again.</exception>
    public Task<Reply> HandleAsync(InboundMessage message, bool outbox = false, CancellationToken cancellation = default) =>
        MeasuredAsync(message, outbox, isSeen: false, null, cancellation);

    /// <summary>
    /// Takes one message of a channel whose messages may come late and out of order; its reply goes into the outbox. It is understood by
    /// what its sender had in view, and one that was sent before its conversation's visit began belongs to the visit that was in view.
    /// </summary>
    /// <param name="seen">What the sender knew of which visit when it was sent, or null where nothing.</param>
    /// <exception cref="RecordsException">Nothing was stored and the message is not taken: the channel tries again.</exception>
    public Task<Reply> HandleLateAsync(InboundMessage message, SeenVisit? seen, CancellationToken cancellation = default) =>
        MeasuredAsync(message, outbox: true, isSeen: true, seen, cancellation);

    /// <summary>
    /// Takes what people in a room said among themselves, as <see cref="HandleLateAsync"/> does, where it answers what is open, brings a
    /// reading or is a command; anything else is theirs: it is not stored and not answered.
    /// </summary>
    public Task HandleOverheardAsync(InboundMessage message, SeenVisit? seen, CancellationToken cancellation = default) =>
        MeasuredAsync(message, outbox: true, isSeen: true, seen, cancellation, isOverheard: true);

    private Task<Reply> MeasuredAsync(InboundMessage message, bool outbox, bool isSeen, SeenVisit? seen, CancellationToken cancellation, bool isOverheard = false)
    {
        ArgumentNullException.ThrowIfNull(message);
        return TurnTelemetry.MeasureAsync(message.Channel, () => HandleTwiceAsync(() => HandleAsync(message, outbox, isSeen, seen, isOverheard, cancellation)));
    }

    private async Task<Reply> HandleAsync(InboundMessage message, bool outbox, bool isSeen, SeenVisit? seen, bool isOverheard, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(message);
        for (var attempt = 0; attempt < options.Attempts; attempt++)
        {
            var current = await log.CurrentVisitAsync(message.Channel, message.Conversation, cancellation);
            if (seen is not null && current is not null && seen.VisitId != current.VisitId && message.At < current.OpenedAt)
            {
                current = new(seen.VisitId, 0, DateTimeOffset.MinValue, null);
            }

            using var pass = await gate.EnterAsync(current?.VisitId ?? $"{message.Channel} {message.Conversation}", cancellation);
            var (append, turn) = IsOver(current, message.At)
                ? await FirstTurnAsync(message, current?.VisitId, outbox, cancellation)
                : await NextTurnAsync(current!, message, outbox, isSeen ? seen ?? new(current!.VisitId, 0) : null, cancellation);
            if (isOverheard && Overheard.IsTheirs(turn))
            {
                if (!Overheard.IsSignOfLife(turn))
                {
                    return turn.Reply;
                }

                append = append with { Answer = append.Answer! with { Outbox = false } };
            }

            if (await SettleAsync(append, turn) is { } reply)
            {
                return reply;
            }
        }

        throw Contended();
    }

    // A line that a restarted database left behind breaks when it is next used. The message's id keeps a second try from taking it twice.
    private static async Task<Reply> HandleTwiceAsync(Func<Task<Reply>> handle)
    {
        try
        {
            return await handle();
        }
        catch (RecordsException broken) when (broken.Fault == RecordsFault.Unreachable)
        {
            return await handle();
        }
    }

    /// <summary>The units of a visit that a message opens.</summary>
    public UnitSystem Units => options.Units;

    /// <summary>True where a message said then would belong to a visit that is there already.</summary>
    public async Task<bool> IsOnVisitAsync(string channel, string conversation, DateTimeOffset at, CancellationToken cancellation = default) =>
        !IsOver(await log.CurrentVisitAsync(channel, conversation, cancellation), at);

    /// <summary>Opens a visit and puts the conversation on it, whatever it was on before.</summary>
    /// <exception cref="RecordsException">Nothing was stored: the asset is not on record, or the records can not be written.</exception>
    public async Task<OpenedVisit> OpenVisitAsync(VisitRequest request, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        var opened = await opener.FirstEventAsync(request, cancellation);
        for (var attempt = 0; attempt < options.Attempts; attempt++)
        {
            var before = await log.VisitOfAsync(request.Channel, request.Conversation, cancellation);
            var turn = engine.Open(opened);
            var append = new Append(options.NewVisitId(), 0, turn.Events) { Opening = new(opened, request.Channel, request.Conversation, before) };
            if (await SettleAsync(append, turn) is { } reply)
            {
                return new(append.VisitId, reply);
            }
        }

        throw Contended();
    }

    /// <summary>The state of a visit now.</summary>
    public async Task<VisitState> StateOfAsync(string visitId, CancellationToken cancellation = default) =>
        await states.GetAsync(visitId, await log.VersionOfAsync(visitId, cancellation), cancellation);

    public void Dispose() => states.Dispose();

    private async Task<(Append, Turn)> FirstTurnAsync(InboundMessage message, string? replaces, bool outbox, CancellationToken cancellation)
    {
        var opened = await opener.FirstEventAsync(opener.RequestOf(message), cancellation);
        var opening = engine.Open(opened);
        var taken = engine.Take(opening.After, message);
        // What the opening warns of is said with the first reply.
        var reply = taken.Reply with { Cautions = [.. opening.Reply.Cautions, .. taken.Reply.Cautions] };
        var turn = new Turn([.. opening.Events, .. taken.Events], taken.After, reply);
        var append = new Append(options.NewVisitId(), 0, turn.Events)
        {
            Opening = new(opened, message.Channel, message.Conversation, replaces),
            Answer = new(message, reply, outbox),
        };
        return (append, turn);
    }

    /// <param name="seen">What the speaker knew, or null where all there is.</param>
    private async Task<(Append, Turn)> NextTurnAsync(CurrentVisit current, InboundMessage message, bool outbox, SeenVisit? seen, CancellationToken cancellation)
    {
        var visitId = current.VisitId;
        var state = await states.GetAsync(visitId, current.Version, cancellation);
        message = OneSpelling.Of(state, message);
        var turn = seen is null || (seen.VisitId == visitId && seen.Version == state.Version)
            ? engine.Take(state, message)
            : engine.Take(state, await SeenStateAsync(visitId, seen, cancellation), message);
        return (new Append(visitId, state.Version, turn.Events) { Answer = new(message, turn.Reply, outbox) }, turn);
    }

    // One who was told nothing of this visit yet knows its beginning: what was there before the first message.
    private async Task<VisitState> SeenStateAsync(string visitId, SeenVisit seen, CancellationToken cancellation)
    {
        var events = await log.ReadAsync(visitId, cancellation);
        var known = seen.VisitId == visitId && seen.Version > 0 ? events.Take(seen.Version) : events.TakeWhile(e => e is not MessageHeard);
        return VisitState.Fold(known);
    }

    /// <summary>The reply once the turn is stored, or null where it must be made again on what others wrote.</summary>
    private async Task<Reply?> SettleAsync(Append append, Turn turn)
    {
        switch (await log.AppendAsync(append))
        {
            case Appended appended:
                states.Keep(append.VisitId, turn.After, appended.Version);
                return turn.Reply;
            case AlreadyApplied repeated:
                return repeated.Reply;
            default:
                states.Forget(append.VisitId);
                return null;
        }
    }

    private bool IsOver(CurrentVisit? visit, DateTimeOffset at) => visit is null || at - visit.ClosedAt > options.AfterClosing;

    private static RecordsException Contended() =>
        new(RecordsFault.Contended, "Others wrote to this visit at the same time again and again. Nothing was stored; say it again.");
}
