using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Turns;

/// <summary>What the record of the equipment knows, said at the opening: what the work is reckoned with, what is built in, and what changed.</summary>
internal sealed class RecordTeller(PhraseBook book)
{
    // The refrigerant is in the greeting already; the rest is there when it is asked for.
    private static readonly ImmutableArray<string> Told =
    [
        FactCatalogue.FullCharge.Name, FactCatalogue.MeteringDevice.Name, "valve_body", "valve_orifice", "valve_setting", FactCatalogue.HeadPressureControl.Name,
        FactCatalogue.HeadPressureControlSetting.Name, FactCatalogue.CondenserVolume.Name, FactCatalogue.DesignCondenserSplit.Name,
    ];

    /// <summary>Nothing where no equipment is on record.</summary>
    public IEnumerable<Phrase> Tell(VisitOpened opened, VisitState state)
    {
        if (opened.AssetId is null)
        {
            yield break;
        }

        var details = opened.Details ?? ImmutableSortedDictionary<string, string>.Empty;
        var known = Told.Select(name => (Name: name, Text: FactCatalogue.Find(name) is { } fact ? state.Facts.Find(fact) is { } value ? FactText.Of(value) : null : details.GetValueOrDefault(name)))
            .Where(d => d.Text is not null)
            .Select(d => $"{NameOf(d.Name)} {book.Word(Plain(d.Text!))}")
            .ToList();
        if (known.Count > 0)
        {
            var count = opened.KnownFacts.Count + details.Count;
            yield return book.Say("open.record", state.Units, ("list", string.Join(", ", known)), ("count", count.ToString(CultureInfo.InvariantCulture)));
        }

        if (opened.Changed is { Count: > 0 } changed)
        {
            var list = changed.Select(c => book.Say("open.changed-detail", state.Units, ("name", NameOf(c.Name)), ("then", Plain(c.Then)), ("now", Plain(c.Now))));
            yield return book.Say("open.changed", state.Units, ("list", string.Join("; ", list.Select(l => char.ToLowerInvariant(l.Full[0]) + l.Full[1..]))));
        }
    }

    // As it is read on a thermometer.
    private static string Plain(string text) => text.Replace(" degF", " °F", StringComparison.Ordinal).Replace(" degC", " °C", StringComparison.Ordinal);

    private string NameOf(string detail) => book.Has("fact." + detail) ? book.Word(detail) : detail.Replace('_', ' ');
}
