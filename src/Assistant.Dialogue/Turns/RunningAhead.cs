using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Turns;

/// <summary>Finds what a bare word is of that does not answer the question: "bubbles" at the condenser's coil is the sight glass.</summary>
internal sealed class RunningAhead(Understand understand, ShortWords words)
{
    /// <summary>A longer message is no bare word.</summary>
    private const int MostWords = 3;

    /// <summary>The observation that is meant, or null where none or several could be.</summary>
    /// <param name="understood">What the message gave with the question in mind: nothing but that a value is open.</param>
    public Understood? Find(VisitState state, string text, string plain, UnderstandingContext context, Understood understood)
    {
        if (understood is not { Intent: Intent.Answer, Readings: [], Observations: [], Clarify: Clarify.Value } || context.Expected is not { IsQuantity: false } asked || text.Any(char.IsDigit) || plain.Count(c => c == ' ') >= MostWords
            || !state.Questioned.IsEmpty || DisputeSettler.Open(state) is not null)
        {
            return null;
        }

        if (words.IsYes(plain) || words.IsNo(plain) || words.IsConfirm(plain))
        {
            // "no" to "none, light or blocked?"
            return words.IsNo(plain) && asked.Choices.Contains("none") && !asked.Choices.Contains("all") ? Seen(new(asked, "none")) : null;
        }

        var fitting = FactCatalogue.All
            .Where(f => f != asked && !f.IsQuantity && f.Kind != FactKind.YesNo && f.Place == context.Place && !state.Facts.Has(f))
            .Select(f => Of(f, text, context)).OfType<Observation>().ToList();
        return fitting is [var only] ? Seen(only) : null;
    }

    private Observation? Of(Fact fact, string text, UnderstandingContext context) =>
        understand(text, context with { Expected = fact }) is { Intent: Intent.Answer, Clarify: null, Readings: [], Observations: [var seen] } && seen.Fact == fact ? seen : null;

    private static Understood Seen(Observation seen) => Understood.Unknown with { Intent = Intent.Answer, Observations = [seen] };
}
