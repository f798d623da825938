using Assistant.App.Hosting;
using Assistant.App.Web;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.App.Tests.Web;

/// <summary>What the page sends for a reading entered by its name is understood as that reading, whatever is asked at the time.</summary>
public class NamedReadingTests
{
    private static readonly Understander Understander = new(Lexicon.Load(DialogFiles.Read("lexicon")));
    private static readonly PhraseBook Phrases = PhraseBook.Load(DialogFiles.Read("phrases"));

    [Theory]
    [InlineData(UnitSystem.Us)]
    [InlineData(UnitSystem.Metric)]
    public void Every_number_by_its_name_with_each_of_its_units(UnitSystem units)
    {
        var wrong =
            from entry in ReadingViews.Catalogue(units, Phrases)
            from unit in entry.Units
            from asked in Asked
            let text = $"{entry.Says} {Number(entry.Fact, unit)} {Written(unit)}"
            let understood = Understander.Understand(text, new(asked, units))
            where understood.Readings.Length != 1 || understood.Readings[0].Fact.Name != entry.Fact || understood.Clarify is not null
            select $"{text} (asked {asked?.Name ?? "nothing"}) -> {Told(understood)}";

        Assert.False(wrong.Any(), string.Join("\n", wrong.Distinct().Prepend("")));
    }

    [Fact]
    public void Every_choice_by_its_name()
    {
        var wrong =
            from entry in ReadingViews.Catalogue(UnitSystem.Us, Phrases)
            from choice in entry.Choices
            from asked in Asked
            let text = choice.Value
            let understood = Understander.Understand(text, new(asked, UnitSystem.Us))
            where understood.Observations.Length != 1 || understood.Observations[0].Fact.Name != entry.Fact || understood.Observations[0].Value != choice.Key
            select $"{text} (asked {asked?.Name ?? "nothing"}) -> {Told(understood)}";

        Assert.False(wrong.Any(), string.Join("\n", wrong.Distinct().Prepend("")));
    }

    private static Fact?[] Asked => [null, FactCatalogue.SuctionPressure, FactCatalogue.AmbientTemperature, FactCatalogue.SightGlass];

    private static string Number(string fact, string unit) => (fact, unit) switch
    {
        ("vacuum", _) => "400",
        (_, "inHg vacuum") => "12",
        _ => "21.5",
    };

    private static string Written(string unit) => unit switch { "degF" => "°F", "degC" => "°C", _ => unit };

    private static string Told(Understood understood) =>
        $"{understood.Intent} {understood.Clarify} {string.Join(" ", understood.Readings.Select(r => $"{r.Fact.Name}={r.Value}{r.Unit.Symbol}"))} {string.Join(" ", understood.Observations.Select(o => $"{o.Fact.Name}={o.Value}"))}";
}
