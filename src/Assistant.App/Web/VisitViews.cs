using Assistant.App.Hosting;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.App.Web;

/// <summary>Makes what the page shows out of a visit's state.</summary>
internal sealed class VisitViews(CallRoom room)
{
    /// <summary>More of the talk than this is in the report, not on the screen.</summary>
    private const int MostTurns = 60;

    private PhraseBook Phrases => room.Dialogue.Phrases;

    /// <summary>The visit as it stands after a reply.</summary>
    public async Task<VisitView> AfterAsync(string id, string visitId, Reply reply, CancellationToken cancellation) =>
        Of(id, await room.Conversations.StateOfAsync(visitId, cancellation), reply, []);

    /// <summary>The visit as it stands, without what was said.</summary>
    public async Task<VisitView> NowAsync(string id, string visitId, CancellationToken cancellation)
    {
        var state = await room.Conversations.StateOfAsync(visitId, cancellation);
        return Of(id, state, room.Now(state), []);
    }

    /// <summary>The visit with the talk so far, as it is opened on the screen.</summary>
    public async Task<VisitView> OpenedAsync(string id, string visitId, CancellationToken cancellation)
    {
        var events = await room.Log.ReadAsync(visitId, cancellation);
        var state = VisitState.Fold(events);
        var entries = new List<object>();
        foreach (var happened in events.Where(e => e is MessageHeard or PictureTaken).TakeLast(MostTurns))
        {
            entries.Add((await EntryAsync(happened, cancellation))!);
        }

        return Of(id, state, room.Now(state), entries);
    }

    /// <summary>What the talk shows of an event; null where it shows nothing.</summary>
    public async Task<object?> EntryAsync(VisitEvent happened, CancellationToken cancellation)
    {
        switch (happened)
        {
            case MessageHeard heard:
                var reply = await room.Log.ReplyToAsync(heard.Channel, heard.MessageId, cancellation);
                return new TurnView(heard.MessageId, heard.By, heard.Channel, heard.Text, heard.At, reply is null ? null : ReplyView.Of(reply));
            case PictureTaken picture:
                return new PictureEntry(picture.PictureId, picture.By, picture.Caption, picture.At);
            default:
                return null;
        }
    }

    private VisitView Of(string id, VisitState state, Reply reply, IReadOnlyList<object> entries)
    {
        var assessment = Assessor.Assess(state.Facts);
        return new(
            id,
            state.Version,
            state.Site ?? "",
            state.Unit,
            state.AssetId,
            state.Units.ToString().ToLowerInvariant(),
            ReadingViews.PlaceName(reply.Walk?.Place ?? state.Place, Phrases),
            reply.Walk?.Stop ?? state.Stop,
            state.Facts.Word(FactCatalogue.Refrigerant),
            state.Facts.Barometer.Pascals,
            state.Outcome is not null,
            ReplyView.Of(reply),
            entries,
            [.. ReadingViews.Of(state, Phrases)],
            [.. DerivedViews.Of(state, assessment.Derived, Phrases)],
            [.. Verdicts(state, assessment)]);
    }

    private IEnumerable<VerdictView> Verdicts(VisitState state, Assessment assessment) =>
        from finding in assessment.Findings
        where finding.Standing != Standing.RuledOut
        select new VerdictView(
            Codes.Of(finding.Code),
            Phrases.Say($"fault.{Codes.Of(finding.Code)}", state.Units).Full,
            Codes.Of(finding.Standing),
            [.. finding.Because.Select(reason => Phrases.Say(reason, state.Units).Full)],
            [.. finding.Against.Select(reason => Phrases.Say(reason, state.Units).Full)]);
}
