using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Records.Rooms;

namespace Assistant.Channels.Rooms;

/// <summary>
/// What a room is told of a visit's new events: what came in elsewhere, who said it and from where; a verdict that was found elsewhere; and
/// the question where it is no longer the one the room was asked last. What was said in the room itself is answered there and no news.
/// </summary>
internal sealed class RoomNews(ITurnEngine engine, PhraseBook book)
{
    private readonly RoomWording wording = new(book);
    private readonly RoomSummary summary = new(engine, book);

    /// <summary>The post, or null where nothing of it is news in that room.</summary>
    /// <param name="events">The visit from its beginning.</param>
    /// <param name="shown">The version of the visit last spoken of in the room, or 0.</param>
    public Reply? Of(Room room, ImmutableArray<VisitEvent> events, int shown)
    {
        var after = VisitState.Fold(events);
        var lines = new RoomNewsLines(wording, room, events, after);
        foreach (var happened in events.Skip(room.Told))
        {
            lines.Take(happened);
        }

        var isWatched = IsWatched(room, events, after);
        var verdict = lines.Verdict is { } given ? Verdict(given, after, events) : null;
        var isProved = !room.CanEdit && events.Skip(room.Told).Any(e => e is VerdictGiven { Text.Length: > 0 });
        var said = new[] { isWatched && !lines.IsUrgent ? null : lines.Text, verdict?.Say.Full, isProved ? summary.Of(after, withVerdict: false) : null }.OfType<string>().ToList();
        if (said.Count == 0)
        {
            return null;
        }

        var now = engine.Take(after, Nothing(after)).Reply;
        var asked = shown == 0 ? null : engine.Take(VisitState.Fold(events.Take(shown)), Nothing(after)).Reply;
        var isAskedAnew = !isWatched && after.Outcome is null && now.Ask?.Full != asked?.Ask?.Full;
        var text = string.Join('\n', said);
        return now with
        {
            Say = new(text, text),
            Because = verdict?.Because ?? [],
            Cautions = isAskedAnew ? Cautions(now, asked) : [],
            Ask = isAskedAnew ? now.Ask : null,
            Choices = isAskedAnew ? now.Choices : [],
            AskedFact = isAskedAnew ? now.AskedFact : null,
            Parts = [],
            AlsoWanted = [],
        };
    }

    /// <summary>True where all who ever spoke in the room only watch.</summary>
    private static bool IsWatched(Room room, ImmutableArray<VisitEvent> events, VisitState after)
    {
        var speakers = events.OfType<MessageHeard>().Where(m => room.Holds(m.Channel, m.MessageId)).Select(m => m.By).Distinct().ToList();
        return speakers.Count > 0 && speakers.TrueForAll(after.Crew.Watching.ContainsKey);
    }

    private (Phrase Say, ImmutableArray<Phrase> Because)? Verdict(VerdictGiven given, VisitState after, ImmutableArray<VisitEvent> events)
    {
        if (given.Text.Length > 0)
        {
            return (new(given.Text, given.Text), [.. given.Because.Select(b => new Phrase(b, b))]);
        }

        // A fault that was put right needs no apology.
        var before = events.Take(given.Number - 1).OfType<VerdictGiven>().LastOrDefault(v => v.Text.Length > 0);
        return before is null || after.Mended.Exists(m => m.Fault == before.Fault) ? null : (book.Say("verdict.withdrawn", after.Units, ("fault", "fault." + before.Fault)), []);
    }

    // What is to be done is never said without its cautions; what is to be read, without those that came with the question before.
    private static ImmutableArray<SpokenCaution> Cautions(Reply now, Reply? asked) =>
        now.AskedFact is null || asked is null ? now.Cautions : [.. now.Cautions.Where(c => !asked.Cautions.Any(a => a.Code == c.Code))];

    private static InboundMessage Nothing(VisitState state) => new("", "", "", "", state.OpenedAt, "repeat");
}
