using Assistant.Dialogue.Replies;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Records.Plots;

/// <summary>The words of a plot, from the phrase book, and its numbers in the reader's units.</summary>
internal sealed class PlotWords(PhraseBook phrases, UnitSystem units)
{
    public bool IsUs => units == UnitSystem.Us;

    public string Say(string key, params ReadOnlySpan<ReasonPart> parts) => phrases.Say($"plot.{key}", units, parts).Full;

    /// <summary>What an axis counts, with its unit.</summary>
    public string Axis(string key, string unit) => Say($"axis.{key}", ("unit", unit));

    public string Written(Amount amount) => AmountText.Written(amount, units);

    /// <summary>The first, the last and up to ten between them, as one list.</summary>
    public static string List(IReadOnlyList<string> items) => items.Count <= 12
        ? string.Join("; ", items)
        : $"{string.Join("; ", items.Take(6))}; ...; {string.Join("; ", items.Skip(items.Count - 5))}";
}
