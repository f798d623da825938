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
    public const int MostTurns = 60;

    private PhraseBook Phrases => room.Dialogue.Phrases;

    /// <summary>The visit as it stands after a reply.</summary>
    public async Task<VisitView> AfterAsync(string id, string visitId, Reply reply, CancellationToken cancellation) =>
        Of(id, await room.Conversations.StateOfAsync(visitId, cancellation), reply, []);

    /// <summary>The visit with the talk so far, as it is opened on the screen.</summary>
    public async Task<VisitView> OpenedAsync(string id, string visitId, CancellationToken cancellation)
    {
        var state = await room.Conversations.StateOfAsync(visitId, cancellation);
        return Of(id, state, room.Now(state), await TurnsAsync(visitId, cancellation));
    }

    private async Task<List<TurnView>> TurnsAsync(string visitId, CancellationToken cancellation)
    {
        var turns = new List<TurnView>();
        foreach (var heard in (await room.Log.ReadAsync(visitId, cancellation)).OfType<MessageHeard>().TakeLast(MostTurns))
        {
            var reply = await room.Log.ReplyToAsync(heard.Channel, heard.MessageId, cancellation);
            turns.Add(new(heard.MessageId, heard.By, heard.Text, heard.At, reply is null ? null : ReplyView.Of(reply)));
        }

        return turns;
    }

    private VisitView Of(string id, VisitState state, Reply reply, IReadOnlyList<TurnView> turns) => new(
        id,
        state.Site ?? "",
        Word(state.Units),
        PlaceName(reply.Walk?.Place ?? state.Place),
        ReplyView.Of(reply),
        turns,
        [.. Readings(state)],
        [.. Verdicts(state)]);

    private IEnumerable<ReadingView> Readings(VisitState state)
    {
        foreach (var fact in FactCatalogue.All)
        {
            if (state.Questioned.TryGetValue(fact, out var questioned))
            {
                yield return new(fact.Name, Label(fact), PlaceName(Word(fact.Place)), Text(questioned.Value), null, Doubted: true);
            }

            if (state.Facts.Find(fact) is { } value)
            {
                var taken = state.History.GetValueOrDefault(fact)?.LastOrDefault();
                var recorded = taken is null || taken.Place == Word(Place.Record);
                yield return new(fact.Name, Label(fact), PlaceName(recorded ? Word(Place.Record) : Word(fact.Place)), Text(value), recorded ? null : taken!.At, Doubted: false);
            }
        }
    }

    private IEnumerable<VerdictView> Verdicts(VisitState state) =>
        from finding in Assessor.Assess(state.Facts).Findings
        where finding.Standing != Standing.RuledOut
        select new VerdictView(
            Codes.Of(finding.Code),
            Phrases.Say($"fault.{Codes.Of(finding.Code)}", state.Units).Full,
            Codes.Of(finding.Standing),
            [.. finding.Because.Select(reason => Phrases.Say(reason, state.Units).Full)],
            [.. finding.Against.Select(reason => Phrases.Say(reason, state.Units).Full)]);

    private string Text(FactValue value) => value is Reading reading ? AmountText.Written(reading) : Phrases.Word(((Observation)value).Value);

    private string Label(Fact fact) => Phrases.Word(fact.Name);

    private string PlaceName(string? place) => place is null ? "" : Phrases.Has($"place.{place}") ? Phrases.Say($"place.{place}", default).Full : place;

    private static string Word<TName>(TName name)
        where TName : struct, Enum => name.ToString().ToLowerInvariant();
}
