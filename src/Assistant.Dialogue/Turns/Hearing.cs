using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Turns;

/// <summary>
/// What a message says on a visit: understood in the light of what is asked and of where the speaker stands, completed where something was
/// asked back, and taken as the correction, or the answer to a later question, that it is.
/// </summary>
internal sealed class Hearing(Understand understand, ShortWords words, WalkStand stand)
{
    private readonly Clarifier clarifier = new(understand);
    private readonly Corrector corrector = new(understand);
    private readonly RunningAhead ahead = new(understand, words);

    /// <summary>What was said, and the fact it was heard as an answer to.</summary>
    /// <param name="plain">The message in small letters, without punctuation.</param>
    public (Understood Understood, Fact? Expected) Hear(VisitState state, InboundMessage message, string plain)
    {
        var context = new UnderstandingContext(Asked(state) ?? stand.NextFact(state), state.Units)
        {
            Place = WhereIs(message.Person, state),
            IsRoomUnknown = !state.Facts.Has(FactCatalogue.Application) && !state.Facts.Has(FactCatalogue.BoxTemperature),
        };
        var understood = understand(message.Text, context);
        if (state.Clarification is { } open && understood.Intent is not (Intent.Command or Intent.Question) && !Clarifier.IsWhole(understood))
        {
            understood = clarifier.Complete(open, message.Text, context) ?? understood;
        }

        understood = corrector.Redirect(state, message.Person, message.Text, context, understood)
            ?? ahead.Find(state, message.Text, plain, context with { Expected = Asked(state) }, understood) ?? understood;

        // "cold room is warm" opens the call; what it leaves open was not asked.
        var opensTheCall = state.LastMessage == 0 && understood is { Intent: Intent.Answer, Readings: [], Observations: [] } && !message.Text.Any(char.IsDigit);
        return (opensTheCall || AnswersNothing(understood, state, message.Text) ? Understood.Unknown with { Cylinder = understood.Cylinder } : understood, context.Expected);
    }

    /// <summary>The fact that the visit asks for now: what is questioned or was asked back first, else the walk's own; null where it asks for a word.</summary>
    public Fact? Asked(VisitState state) =>
        state.Questioned.Values.MinBy(q => q.Number)?.Value.Fact ?? state.Clarification?.Fact ?? DisputeSettler.Open(state)?.Fact ?? CylinderTaker.Expected(state) ?? RequestTaker.Due(state, stand.Stop(state))?.Fact ?? Asker.FactAt(state);

    /// <summary>The place of the stop the walk stands at. The places of a walk carry the names of the facts' places.</summary>
    public static Place? PlaceOfTheStop(VisitState state) => Enum.TryParse<Place>(state.Place, ignoreCase: true, out var place) ? place : null;

    // Where no fact was asked, a bare yes, "safe" or "nothing" is no number half heard and of no part.
    private bool AnswersNothing(Understood understood, VisitState state, string text) =>
        understood is { Intent: Intent.Answer, Readings: [], Observations: [], Clarify: Clarify.Value or Clarify.Fact } && Asked(state) is null && !text.Any(char.IsDigit);

    // Where the walk stands, unless the speaker has read something elsewhere since.
    private static Place? WhereIs(string person, VisitState state)
    {
        var reached = state.Run is { Stop: { } stop } run ? run.Reached(stop)?.Number ?? 0 : 0;
        var since = state.History.Values.SelectMany(entries => entries)
            .Where(t => t.Number > reached && t.By == person && t.Value?.Fact.Place is Place.Room or Place.Unit).MaxBy(t => t.Number);
        return since?.Value!.Fact.Place ?? PlaceOfTheStop(state);
    }
}
