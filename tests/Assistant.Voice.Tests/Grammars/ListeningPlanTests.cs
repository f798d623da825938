using Assistant.Dialogue.Files;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Grammars;

namespace Assistant.Voice.Tests.Grammars;

public sealed class ListeningPlanTests
{
    private const string Least = """
        confirm: { accept: [yes], reject: [no] }
        digits: { go: [go], clear: [clear] }
        controls: { stop: [stop], slower: [slower], faster: [faster], louder: [louder] }
        """;

    [Fact]
    public void A_facts_own_numbers_go_before_its_kinds()
    {
        var plan = Load("""
            numbers: { pressure: { psig: { from: 0, to: 700, places: 1 }, bar: { from: 0, to: 60, places: 2 } } }
            facts: { suction_pressure: { psig: { from: 0, to: 250, places: 1 } } }
            """);

        Assert.Equal(250, plan.SpanOf(FactCatalogue.SuctionPressure, UnitOfMeasure.Psig)!.To);
        Assert.Equal(60, plan.SpanOf(FactCatalogue.SuctionPressure, UnitOfMeasure.Bar)!.To);
        Assert.Equal(700, plan.SpanOf(FactCatalogue.DischargePressure, UnitOfMeasure.Psig)!.To);
        Assert.Null(plan.SpanOf(FactCatalogue.DischargePressure, UnitOfMeasure.Kilopascal));
    }

    [Theory]
    [InlineData("confirmed: [fly]", "confirmed.fly", "only a command")]
    [InlineData("wind: [gust]", "wind", "no field")]
    [InlineData("numbers: { speed: { knot: { from: 0, to: 1, places: 0 } } }", "speed", "no fact")]
    [InlineData("numbers: { pressure: { psig: { from: 9, to: 1, places: 0 } } }", "Pressure", "above from")]
    [InlineData("numbers: { pressure: { psig: { from: 0, to: lots, places: 0 } } }", "Pressure", "whole number")]
    public void A_mistake_is_named_with_file_line_and_key(string line, string key, string said)
    {
        var wrong = Assert.Throws<DialogDataException>(() => Load(line));

        Assert.Contains(wrong.Defects, d => d.File == "dialogs/voice/listening.yaml" && d.Line > 0
            && (d.ToString().Contains(key, StringComparison.OrdinalIgnoreCase)) && d.Message.Contains(said, StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_word_for_no_there_is_no_listening()
    {
        var wrong = Assert.Throws<DialogDataException>(() => ListeningPlan.Load(new("dialogs/voice/listening.yaml", "confirm: { accept: [yes] }")));

        Assert.Contains(wrong.Defects, d => d.Key == "confirm.reject");
    }

    private static ListeningPlan Load(string lines) => ListeningPlan.Load(new("dialogs/voice/listening.yaml", Least + "\n" + lines));
}
