using System.Collections.Frozen;
using Assistant.Channels.Bots;
using Assistant.Channels.Shaping;
using Assistant.Channels.Text;
using Assistant.Channels.Xmpp;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Records.People;
using Assistant.Records.Reminders;
using Assistant.Trade.Quantities;
using Microsoft.Bot.Builder;
using Microsoft.Bot.Schema;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Endpoint;

/// <summary>
/// Stands before the bot where it is called over the network: with a firm set up a message comes in under the name of the person its
/// account is enrolled for, and from nobody else. The account is the one the channel's service vouches for, never the name shown.
/// </summary>
public sealed partial class SpeakerDoor(PeopleService people, PhraseBook book, TimeProvider clock, ILogger<SpeakerDoor> logger) : IMiddleware
{
    /// <summary>Names that stand for the program's other ways in: no service may call itself by them.</summary>
    private static readonly FrozenSet<string> Taken = FrozenSet.Create(
        StringComparer.OrdinalIgnoreCase, ReplyShaping.TerminalChannel, TextSettings.Channel, XmppSettings.Channel, ContactAlert.Channel, "page", "voice", "key", "oidc");

    public async Task OnTurnAsync(ITurnContext turnContext, NextDelegate next, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(turnContext);
        ArgumentNullException.ThrowIfNull(next);
        if (turnContext.Activity.Type != ActivityTypes.Message)
        {
            await next(cancellationToken);
            return;
        }

        var message = ActivityReader.Read(turnContext.Activity, clock.GetUtcNow());
        if (Taken.Contains(message.Channel))
        {
            Foreign(logger, message.Channel);
            return;
        }

        var (isLetIn, reply) = await AnswerAsync(turnContext, message, cancellationToken);
        if (reply is not null)
        {
            await turnContext.SendActivityAsync(ReplyShaping.For(message.Channel, reply), cancellationToken);
        }

        if (isLetIn)
        {
            await next(cancellationToken);
        }
    }

    /// <summary>Whether the message goes through, and what the door itself answers.</summary>
    private async Task<(bool IsLetIn, Reply? Reply)> AnswerAsync(ITurnContext turn, InboundMessage message, CancellationToken cancellation)
    {
        if (!await people.HasFirmsAsync(cancellation))
        {
            return (true, null);
        }

        var activity = turn.Activity;
        var account = activity.From?.Id ?? "";
        var isDirect = activity.Conversation?.IsGroup is not true;
        if (isDirect && account.Length > 0 && SpokenCode.Read(message.Text) is { } code)
        {
            return (false, await people.Enrolment.EnrolAsync(message.Channel, account, code, cancellation) is Enrolled enrolled
                ? Line("chat.enrolled", ("person", enrolled.Person.Name))
                : Line("chat.code-refused"));
        }

        if (await people.Phones.WhoIsAsync(message.Channel, account, cancellation) is not { } person)
        {
            Stranger(logger, message.Channel);
            return (false, isDirect ? Line("chat.stranger-direct") : ActivityReader.IsToUs(activity) ? Line("chat.stranger") : null);
        }

        activity.From!.Name = person.Name;
        turn.TurnState.Add(person);
        return (true, null);
    }

    private Reply Line(string key, params ReadOnlySpan<Trade.Rules.ReasonPart> parts) => new(book.Say(key, UnitSystem.Us, parts), [], [], null, [], null, [], null, []);

    [LoggerMessage(LogLevel.Warning, "Bot: a message that calls its channel {Channel} is refused: that is one of our own")]
    private static partial void Foreign(ILogger logger, string channel);

    [LoggerMessage(LogLevel.Warning, "Bot: somebody on {Channel} who is not enrolled is refused")]
    private static partial void Stranger(ILogger logger, string channel);
}
