using Assistant.Channels.Rooms;
using Assistant.Dialogue.Replies;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.People;
using Assistant.Records.Storage;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Xmpp;

/// <summary>
/// Takes what is said in the rooms and what is written directly: finds out who it is by the account, and puts the reply into the outbox
/// in one commit with what it answers.
/// </summary>
internal sealed partial class XmppDesk(EventLog log, ConversationService conversations, VisitJoining joining, PhraseBook book, PeopleService people, XmppSettings settings, TimeProvider clock, ILogger logger) : IXmppTalk
{
    private const string Channel = XmppSettings.Channel;

    private readonly ReplyOutbox outbox = new(log.Database);
    private readonly RoomDesk desk = new(log, conversations, clock);

    public async Task HearAsync(RoomWords words, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(words);
        var room = words.Room.ToString();
        if (!words.IsToUs && !await conversations.IsOnVisitAsync(Channel, room, words.At, cancellation))
        {
            return;
        }

        var said = new Said(words.Id, room, words.At, words.Text, words.IsToUs);
        if (await WhoIsAsync(words.Account, words.Nick, cancellation) is { } speaker)
        {
            await TakeAsync(said, speaker, cancellation);
        }
        else if (words.IsToUs)
        {
            Stranger(logger, room);
            await OnceADayAsync(said, words.Account is null ? "" : words.Nick, words.Account is null ? Line("xmpp.hidden") : Line("xmpp.stranger", ("nick", words.Nick), ("self", settings.Self.ToString())), cancellation);
        }
    }

    public async Task PostedAsync(Jid room, string id, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(room);
        foreach (var item in await outbox.TriedAsync(Channel, room.ToString(), cancellation))
        {
            if (PostId.Of(item) == id)
            {
                await outbox.HandedOverAsync(item.Id, clock.GetUtcNow(), cancellation);
            }
        }
    }

    public async Task HearAsync(DirectWords words, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(words);
        var account = words.Account.ToString();
        var said = new Said(words.Id, account, words.At, words.Text, IsToUs: true);
        var speaker = await WhoIsAsync(words.Account, words.Account.Local!, cancellation);
        var result = SpokenCode.Read(words.Text) is { } code ? await people.Enrolment.EnrolAsync(Channel, account, code, cancellation) : null;
        if (result is Enrolled enrolled)
        {
            await SayAsync(said, Line("chat.enrolled", ("person", enrolled.Person.Name)), cancellation);
        }
        else if (speaker is not null)
        {
            await TakeAsync(said, speaker, cancellation);
        }
        else
        {
            Stranger(logger, "a direct message");
            await OnceADayAsync(said, "", Line(result is null ? "chat.stranger-direct" : "chat.code-refused"), cancellation);
        }
    }

    private async Task<Speaker?> WhoIsAsync(Jid? account, string called, CancellationToken cancellation)
    {
        var person = account is null ? null : await people.Phones.WhoIsAsync(Channel, account.ToString(), cancellation);
        return person is not null ? new(person.Name, person)
            : !await people.HasFirmsAsync(cancellation) ? new(called, null)
            : null;
    }

    private async Task TakeAsync(Said said, Speaker speaker, CancellationToken cancellation)
    {
        try
        {
            if (await joining.TakeAsync(said.Text, speaker.Person, speaker.Name, Channel, said.Conversation, cancellation) is { } joined)
            {
                await outbox.AddAsync(new(Channel, said.Conversation, said.Id, joined.Reply, clock.GetUtcNow(), joined.Seen), cancellation);
                return;
            }

            await desk.TakeAsync(new(said.Id, Channel, said.Conversation, speaker.Name, said.At, said.Text), said.IsToUs, cancellation);
        }
        catch (Exception failure) when (failure is not (RecordsException or OperationCanceledException))
        {
            // One message that can not be taken must not hold up all that come after it. Its sender is told.
            NotTaken(logger, failure);
            await SayAsync(said, Line("xmpp.failed"), cancellation);
        }
    }

    // One line a day to one whom nobody knows, whatever they say.
    private Task OnceADayAsync(Said said, string who, Reply line, CancellationToken cancellation) =>
        outbox.AddAsync(Channel, said.Conversation, $"stranger {said.Conversation} {who} {said.At.UtcDateTime:yyyy-MM-dd}", line, clock.GetUtcNow(), cancellation);

    private Task SayAsync(Said said, Reply line, CancellationToken cancellation) =>
        outbox.AddAsync(Channel, said.Conversation, said.Id, line, clock.GetUtcNow(), cancellation);

    private Reply Line(string key, params ReadOnlySpan<ReasonPart> parts) => new(book.Say(key, UnitSystem.Us, parts), [], [], null, [], null, [], null, []);

    [LoggerMessage(LogLevel.Warning, "Chat: somebody in {Place} who is not enrolled is refused")]
    private static partial void Stranger(ILogger logger, string place);

    [LoggerMessage(LogLevel.Error, "Chat: a message could not be taken")]
    private static partial void NotTaken(ILogger logger, Exception failure);

    private sealed record Speaker(string Name, Person? Person);

    private sealed record Said(string Id, string Conversation, DateTimeOffset At, string Text, bool IsToUs);
}
