using System.Text.RegularExpressions;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.People;
using Assistant.Trade.Quantities;

namespace Assistant.Channels;

/// <summary>"join 2346": puts a conversation of a channel, and who speaks in it, on the open visit of that code.</summary>
public sealed partial class VisitJoining(EventLog log, ITurnEngine engine, PhraseBook book, PeopleService people)
{
    /// <summary>What is answered, and what of which visit is known by the answer; null where the words are no wish to join.</summary>
    /// <param name="person">Who speaks, or null where the channel does not know: with a firm set up such a one joins nothing.</param>
    /// <param name="called">What the channel calls them by.</param>
    public async Task<(Reply Reply, SeenVisit? Seen)?> TakeAsync(string text, Person? person, string called, string channel, string conversation, CancellationToken cancellation)
    {
        if (JoinPattern().Match(ShortWords.Plain(text)) is not { Success: true } join)
        {
            return null;
        }

        if (await people.Visits.JoinByCodeAsync(join.Groups["code"].Value, person, channel, conversation, called: called, cancellation: cancellation) is not Joined joined)
        {
            return (new(book.Say("text.join-refused", UnitSystem.Us), [], [], null, [], null, [], null, []), null);
        }

        var state = VisitState.Fold(await log.ReadAsync(joined.VisitId, cancellation));
        var now = engine.Take(state, new("", "", "", "", state.OpenedAt, "repeat")).Reply;
        return (now with { Say = book.Say("text.joined", state.Units, ("site", state.Site ?? "")), Parts = [], Cautions = [] }, new(joined.VisitId, state.Version));
    }

    [GeneratedRegex(@"^(join|visit) (?<code>\d{4,8})$")]
    private static partial Regex JoinPattern();
}
