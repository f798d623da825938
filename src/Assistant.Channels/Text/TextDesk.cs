using System.Globalization;
using System.Text.RegularExpressions;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Records.Conversations;
using Assistant.Records.Inbox;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.Storage;
using Assistant.Trade.Quantities;

namespace Assistant.Channels.Text;

/// <summary>
/// Takes the stored text messages one by one in the order they were sent, and puts the reply to each into the outbox, once. Stopped and
/// started anywhere it goes on where it was.
/// </summary>
public sealed partial class TextDesk(EventLog log, ConversationService conversations, ITurnEngine engine, PhraseBook book, ITextPeople people, TextSettings settings, TimeProvider clock, Action<Exception>? onFailure = null, ReportAddress? reports = null)
{
    /// <summary>A gateway tells the time in whole seconds: what was told within the second was known in it.</summary>
    private static readonly TimeSpan GatewaySecond = TimeSpan.FromMilliseconds(999);

    private static readonly HashSet<string> StopWords = ["stop", "stop all", "stopall", "unsubscribe"];
    private static readonly HashSet<string> StartWords = ["start", "unstop"];
    private static readonly HashSet<string> PictureWords = ["pic", "pics", "picture", "pictures", "photo", "photos", "send picture", "send photo", "picture link"];

    private static readonly HashSet<string> ReportWords = ["report link", "link", "send report", "send me the report", "send the report", "link to the report", "link to report", "report by link"];

    private static readonly TimeSpan Memory = TimeSpan.FromDays(30);

    private readonly Action<Exception> troubled = onFailure ?? (static _ => { });
    private readonly MessageInbox inbox = new(log.Database);
    private readonly ReplyOutbox outbox = new(log.Database);
    private readonly VisitOpening opening = new(log, conversations, book);

    /// <summary>Stores a message as it comes in. It is answered for once this returns, and the same one again changes nothing.</summary>
    public Task<bool> ReceiveAsync(string id, string number, string text, DateTimeOffset sentAt, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(text);
        var now = clock.GetUtcNow();
        var words = text.Length <= TextSettings.LongestText ? text : text[..TextSettings.LongestText];
        return inbox.StoreAsync(new(TextSettings.Channel, id, number, words, sentAt < now ? sentAt : now, now), cancellation);
    }

    /// <summary>Forgets the messages handled more than thirty days ago: no gateway brings those again.</summary>
    public Task ForgetAsync(CancellationToken cancellation = default) => inbox.ForgetAsync(clock.GetUtcNow() - Memory, cancellation);

    /// <summary>Handles what is stored and not handled yet.</summary>
    /// <returns>How many messages were handled.</returns>
    public async Task<int> HandleAllAsync(CancellationToken cancellation = default)
    {
        var handled = 0;
        while (await HandleNextAsync(cancellation))
        {
            handled++;
        }

        return handled;
    }

    /// <summary>Handles the one that was sent first; false where none waits.</summary>
    public async Task<bool> HandleNextAsync(CancellationToken cancellation = default)
    {
        await using var taken = await inbox.TakeNextAsync(TextSettings.Channel, GatewaySecond, cancellation);
        if (taken is not { Message: var received })
        {
            return false;
        }

        // An answer in the outbox says that it was handled before and only the note of it was lost.
        if (!await outbox.HasAsync(TextSettings.Channel, received.MessageId, cancellation))
        {
            try
            {
                await HandleAsync(received, cancellation);
            }
            catch (Exception failure) when (failure is not (RecordsException or OperationCanceledException))
            {
                // One message that can not be taken must not hold up all that come after it. Its sender is told.
                troubled(failure);
                await SayAsync(received, "text.failed", cancellation);
            }
        }

        await taken.HandledAsync(clock.GetUtcNow(), cancellation);
        return true;
    }

    private async Task HandleAsync(ReceivedMessage received, CancellationToken cancellation)
    {
        var plain = ShortWords.Plain(received.Text);
        var person = await people.NameOfAsync(received.Conversation, cancellation);
        if (StopWords.Contains(plain))
        {
            await StopAsync(received, person, cancellation);
        }
        else if (StartWords.Contains(plain) && person is not null)
        {
            await people.StartAsync(received.Conversation, cancellation);
            await SayAsync(received, "text.started", cancellation);
        }
        else if (await people.IsStoppedAsync(received.Conversation, cancellation) && !StartWords.Contains(plain))
        {
            // Nothing is sent to one who asked for nothing.
        }
        else if (person is null)
        {
            await MeetAsync(received, cancellation);
        }
        else if (await people.EnrolAsync(received.Conversation, received.Text, cancellation) is TextEnrolment.Done moved)
        {
            // The phone goes over to another person; a code is no word of a visit.
            await SayAsync(received, "text.enrolled", cancellation, ("person", moved.Person));
        }
        else
        {
            await TalkAsync(received, person, plain, cancellation);
        }
    }

    private async Task StopAsync(ReceivedMessage received, string? person, CancellationToken cancellation)
    {
        var wasStopped = await people.IsStoppedAsync(received.Conversation, cancellation);
        await people.StopAsync(received.Conversation, cancellation);
        if (person is not null && !wasStopped)
        {
            await SayAsync(received, "text.stopped", cancellation);
        }
    }

    private async Task MeetAsync(ReceivedMessage received, CancellationToken cancellation)
    {
        switch (await people.EnrolAsync(received.Conversation, received.Text, cancellation))
        {
            case TextEnrolment.Done { IsStopped: true }:
                // Only the number itself can lift its STOP.
                break;
            case TextEnrolment.Done done:
                await SayAsync(received, "text.enrolled", cancellation, ("person", done.Person));
                break;
            case TextEnrolment.Refused:
                await LineOfTheDayAsync(received, "text.code-refused", cancellation);
                break;
            default:
                await LineOfTheDayAsync(received, "text.stranger", cancellation);
                break;
        }
    }

    // One line a day to a number nobody knows, whatever it sends.
    private Task LineOfTheDayAsync(ReceivedMessage received, string key, CancellationToken cancellation) => outbox.AddAsync(
        TextSettings.Channel, received.Conversation, $"stranger {received.Conversation} {received.ReceivedAt:yyyy-MM-dd}", Line(key), clock.GetUtcNow(), cancellation);

    private async Task TalkAsync(ReceivedMessage received, string person, string plain, CancellationToken cancellation)
    {
        var sent = TimeZoneInfo.ConvertTime(received.SentAt, clock.LocalTimeZone);
        var message = new InboundMessage(received.MessageId, TextSettings.Channel, received.Conversation, person, sent, received.Text);
        var isOnVisit = await conversations.IsOnVisitAsync(TextSettings.Channel, received.Conversation, sent, cancellation);
        if (PictureWords.Contains(plain))
        {
            await PictureAsync(received, cancellation);
        }
        else if (ReportWords.Contains(plain))
        {
            await ReportAsync(received, cancellation);
        }
        else if (JoinPattern().Match(plain) is { Success: true } join)
        {
            await JoinAsync(received, join.Groups["code"].Value, cancellation);
        }
        else if (await opening.TakeAsync(message, cancellation) is { } begun)
        {
            await outbox.AddAsync(new(TextSettings.Channel, received.Conversation, received.MessageId, begun.Reply, clock.GetUtcNow(), begun.Seen), cancellation);
        }
        else if (!isOnVisit && engine.Answer(message, conversations.Units) is { } answer)
        {
            await outbox.AddAsync(TextSettings.Channel, received.Conversation, received.MessageId, answer, clock.GetUtcNow(), cancellation);
        }
        else
        {
            var seen = await outbox.SeenAsync(TextSettings.Channel, received.Conversation, received.SentAt + GatewaySecond, cancellation);
            await conversations.HandleLateAsync(message, seen, cancellation);
        }
    }

    private async Task JoinAsync(ReceivedMessage received, string code, CancellationToken cancellation)
    {
        if (await people.JoinAsync(received.Conversation, code, cancellation) is not { } visit)
        {
            await SayAsync(received, "text.join-refused", cancellation);
            return;
        }

        var state = VisitState.Fold(await log.ReadAsync(visit, cancellation));
        var now = engine.Take(state, new("", "", "", "", state.OpenedAt, "repeat")).Reply;
        var reply = now with { Say = book.Say("text.joined", state.Units, ("site", state.Site ?? "")), Parts = [], Cautions = [] };
        await outbox.AddAsync(new(TextSettings.Channel, received.Conversation, received.MessageId, reply, clock.GetUtcNow(), new(visit, state.Version)), cancellation);
    }

    private async Task PictureAsync(ReceivedMessage received, CancellationToken cancellation)
    {
        var visit = await log.VisitOfAsync(TextSettings.Channel, received.Conversation, cancellation);
        if (visit is not null && settings.PictureUrl is { } url)
        {
            await SayAsync(received, "text.picture", cancellation, ("link", url.Replace("{visit}", visit, StringComparison.Ordinal)));
        }
        else
        {
            await SayAsync(received, "text.picture-page", cancellation);
        }
    }

    private async Task ReportAsync(ReceivedMessage received, CancellationToken cancellation)
    {
        if (await log.VisitOfAsync(TextSettings.Channel, received.Conversation, cancellation) is not { } visit)
        {
            await SayAsync(received, "text.report-nowhere", cancellation);
        }
        else if (reports is null)
        {
            await SayAsync(received, "text.report-page", cancellation);
        }
        else
        {
            var (address, until) = await reports(visit, cancellation);
            await SayAsync(received, "text.report-link", cancellation, ("link", address), ("date", until.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)));
        }
    }

    private Task SayAsync(ReceivedMessage received, string key, CancellationToken cancellation, params ReadOnlySpan<Trade.Rules.ReasonPart> parts) =>
        outbox.AddAsync(TextSettings.Channel, received.Conversation, received.MessageId, Line(key, parts), clock.GetUtcNow(), cancellation);

    [GeneratedRegex(@"^(join|visit) (?<code>\d{4,8})$")]
    private static partial Regex JoinPattern();

    private Reply Line(string key, params ReadOnlySpan<Trade.Rules.ReasonPart> parts)
    {
        var said = book.Say(key, UnitSystem.Us, parts);
        return new(said, [], [], null, [], null, [], null, []) { Parts = [new(key, null, said)] };
    }
}
