using Assistant.Dialogue.Files;
using Assistant.Dialogue.Replies;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Tests.Replies;

public sealed class PhraseBookTests
{
    [Fact]
    public void A_phrase_fills_its_numbers_in_the_units_of_the_site()
    {
        var book = Load("split: { full: \"Split {split} against {plate}.\", brief: \"{split}/{plate}\" }");
        var reason = new Reason("split", ("split", new TemperatureDifference(26)), ("plate", new TemperatureDifference(12)));

        Assert.Equal(new Phrase("Split 26 K against 12 K.", "26 K/12 K"), book.Say(reason, UnitSystem.Metric));
        Assert.Equal("Split 47 °F against 22 °F.", book.Say(reason, UnitSystem.Us).Full);
    }

    [Fact]
    public void A_word_is_said_by_its_own_phrase_and_opens_a_sentence_with_a_capital()
    {
        var book = Load(
            "taken: { full: \"{fact}: {word}.\", brief: \"{word}\" }\n" +
            "fact.coil_ice: { full: \"ice on the coil\", brief: \"ice\" }\n" +
            "word.distributor-end: { full: \"at the distributor end only\", brief: \"distributor end\" }");

        var said = book.Say("taken", UnitSystem.Us, ("fact", "coil_ice"), ("word", "distributor-end"));

        Assert.Equal(new Phrase("Ice on the coil: at the distributor end only.", "Distributor end"), said);
    }

    [Fact]
    public void A_phrase_may_have_a_form_for_the_ear_and_a_word_in_it_too_and_is_said_in_brief_where_it_has_none()
    {
        var book = Load(
            "taken: { full: \"{fact}: {word}.\", brief: \"{word}\", spoken: \"the {fact}, {word}\" }\n" +
            "fact.sight_glass: { full: \"sight glass\", brief: \"sg\", spoken: \"glass\" }\n" +
            "word.none: { full: \"no ice\", brief: \"none\" }");

        var said = book.Say("taken", UnitSystem.Us, ("fact", "sight_glass"), ("word", "none"));

        Assert.Equal(("None", "the glass, none"), (said.Brief, said.Aloud));
        Assert.Equal("the glass, none Sg", said.Then(new("Sight glass", "Sg")).Aloud);
        Assert.Equal("Sg", new Phrase("Sight glass", "Sg").Aloud);
    }

    [Fact]
    public void A_share_can_be_said_in_percent()
    {
        var book = Load("flooded: { full: \"{share:percent} full of liquid\", brief: \"{share:percent}\" }");

        Assert.Equal("67 % full of liquid", book.Say("flooded", UnitSystem.Us, ("share", Amount.Ratio(0.667))).Full);
    }

    [Fact]
    public void A_missing_phrase_and_a_missing_part_are_named()
    {
        var book = Load("split: { full: \"Split {split}.\", brief: \"{split}\" }");

        Assert.Contains("'glass'", Assert.Throws<KeyNotFoundException>(() => book.Say("glass", UnitSystem.Us)).Message, StringComparison.Ordinal);
        Assert.Contains("{split}", Assert.Throws<KeyNotFoundException>(() => book.Say("split", UnitSystem.Us)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a: { full: \"One.\", brief: \"1\" }\nb: { full: \"Two.\" }", DefectKind.MissingBrief, 2, "b")]
    [InlineData("a: { brief: \"1\" }", DefectKind.MissingFull, 1, "a")]
    [InlineData("a: { full: \"One.\", brief: \"1\", sung: \"one\" }", DefectKind.UnknownField, 1, "a")]
    [InlineData("a: { full: \"One {x}\", brief: \"{x}\", spoken: \"{y}\" }", DefectKind.UnknownPlaceholder, 1, "a")]
    [InlineData("a: { full: \"One {x\", brief: \"1\" }", DefectKind.BadPlaceholder, 1, "a")]
    [InlineData("a: { full: \"One {x:f2}\", brief: \"1\" }", DefectKind.BadPlaceholder, 1, "a")]
    [InlineData("a: { full: \"One {x}\", brief: \"{y}\" }", DefectKind.UnknownPlaceholder, 1, "a")]
    [InlineData("a: { full: \"One.\", brief: \"1\" }\na: { full: \"One.\", brief: \"1\" }", DefectKind.DuplicateId, 2, "file")]
    [InlineData("a: just a text", DefectKind.BrokenYaml, 1, "a")]
    [InlineData("- a list", DefectKind.BrokenYaml, 1, "file")]
    public void A_mistake_names_file_line_and_key(string text, DefectKind kind, int line, string key)
    {
        var defect = Assert.Single(Assert.Throws<DialogDataException>(() => Load(text)).Defects);

        Assert.Equal((kind, "phrases/test.yaml", line, key), (defect.Kind, defect.File, defect.Line, defect.Key));
    }

    [Fact]
    public void A_key_that_two_files_define_is_a_duplicate_in_the_second()
    {
        const string Text = "a: { full: \"One.\", brief: \"1\" }";

        var thrown = Assert.Throws<DialogDataException>(() => PhraseBook.Load([new("one.yaml", Text), new("two.yaml", Text)]));

        Assert.Equal((DefectKind.DuplicateId, "two.yaml"), (thrown.Defects[0].Kind, thrown.Defects[0].File));
    }

    private static PhraseBook Load(string text) => PhraseBook.Load([new DialogFile("phrases/test.yaml", text)]);
}
