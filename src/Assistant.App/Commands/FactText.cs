using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.App.Commands;

/// <summary>Reads the text of a fact as the answer of somebody who was asked for it.</summary>
internal static class FactText
{
    /// <summary>The value, or null with the key of the sentence that says why not.</summary>
    public static FactValue? Read(Understander understander, string name, string text, UnitSystem units, out string why)
    {
        why = "reason.reading-unknown-fact";
        if (FactCatalogue.Find(name) is not { } fact)
        {
            return null;
        }

        var understood = understander.Understand(text, new(fact, units));
        why = understood.Clarify == Clarify.Unit ? "reason.reading-unclear-unit" : "reason.reading-unreadable";
        return understood.Clarify is not null ? null
            : fact.IsQuantity ? understood.Readings.LastOrDefault(r => r.Fact == fact)
            : understood.Observations.LastOrDefault(o => o.Fact == fact);
    }
}
