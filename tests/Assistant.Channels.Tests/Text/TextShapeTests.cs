using System.Collections.Immutable;
using Assistant.Channels.Text;
using Assistant.Dialogue.Replies;

namespace Assistant.Channels.Tests.Text;

public class TextShapeTests
{
    private static readonly TextShape Shape = new(Spoken.Book);

    [Fact]
    public void The_verdict_stands_first_and_the_question_last()
    {
        var text = Shape.Of(Reply(
            [Taken("discharge_pressure", "24 bar."), new("derived.split", null, Brief("26 K over the air.")), new("verdict.established", null, Brief("Verdict: dirty coil."))],
            ask: "Clean it. Done, or later.",
            cautions: ["Lock out, tag, prove dead."]));

        Assert.Equal("Verdict: dirty coil. hd 24 bar. 26K over the air. CAUTION: Lock out, tag, prove dead. Clean it. Done, or later.", text);
    }

    [Fact]
    public void The_numbers_are_repeated_by_the_letters_they_were_typed_with()
    {
        var text = Shape.Of(Reply([Taken("suction_pressure", "22 psig."), Taken("liquid_line_temperature", "95 °F."), Taken("sight_glass", "flashing.")], ask: "Head pressure?"));

        Assert.Equal("suc 22 psig, ll 95F, sg flashing. Head pressure?", text);
    }

    [Fact]
    public void What_else_is_wanted_here_comes_along_where_it_fits()
    {
        var wanted = Reply([Taken("box_temperature", "47 °F.")], ask: "Second thermometer?") with { AlsoWanted = ["setpoint", "differential", "evaporator_fans"] };

        Assert.Equal("box 47F. Second thermometer? Also: set, diff, evap fans.", Shape.Of(wanted));
    }

    [Fact]
    public void A_list_that_does_not_fit_is_cut_from_its_end()
    {
        var wanted = Reply([new("answer", null, Brief(new string('x', 100)))], ask: "Second thermometer?") with
        {
            AlsoWanted = ["setpoint", "differential", "calling_for_cooling", "evaporator_fans", "door_condition", "product_temperature"],
        };

        var text = Shape.Of(wanted);

        Assert.EndsWith("Second thermometer? Also: set, diff, calling, evap fans.", text, StringComparison.Ordinal);
        Assert.Equal(1, Gsm7.Segments(text));
    }

    [Fact]
    public void A_caution_is_kept_whole_where_all_else_is_cut()
    {
        var caution = "Never a flame on a cylinder: " + new string('w', 120) + " last word.";
        var text = Shape.Of(Reply([new("answer", null, Brief(string.Join(' ', Enumerable.Repeat("word", 100))))], ask: "Done, or later?", cautions: [caution]));

        Assert.Contains(caution, text, StringComparison.Ordinal);
        Assert.EndsWith("Done, or later?", text, StringComparison.Ordinal);
        Assert.Contains("word.. CAUTION", text, StringComparison.Ordinal);
        Assert.Equal(2, Gsm7.Segments(text));
    }

    [Fact]
    public void Many_cautions_are_said_in_fewer_words_before_a_number_is_cut()
    {
        string[] codes = ["trapped-inside", "lone-work", "ladder", "roof-weather", "food-safety", "electrical"];
        var reply = Reply([.. Enumerable.Range(1, 8).Select(i => Taken("discharge_pressure", $"{i}00 psig."))], ask: "Tell me when at the unit.") with
        {
            Cautions = [.. codes.Select(c => new SpokenCaution(c, Spoken.Book.Say("caution." + c, Trade.Quantities.UnitSystem.Us)))],
        };

        var text = Shape.Of(reply);

        Assert.Equal(2, Gsm7.Segments(text));
        Assert.Contains("hd 800 psig. CAUTION: Try the door release.", text, StringComparison.Ordinal);
        Assert.EndsWith("Live parts kill: isolate. Tell me when at the unit.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Asked_for_more_everything_is_sent()
    {
        var reasons = Enumerable.Range(1, 6).Select(i => new Phrase($"Reason {i} in its full form, {new string('r', 60)}.", "r")).ToImmutableArray();
        var more = Reply([], ask: "Head pressure?") with { Because = reasons, IsWhole = true };

        var text = Shape.Of(more);

        Assert.All(reasons, r => Assert.Contains(r.Full, text, StringComparison.Ordinal));
        Assert.Equal(1, Gsm7.Segments(Shape.Of(more with { IsWhole = false })));
    }

    private static Phrase Brief(string text) => new(text, text);

    private static SaidPart Taken(string fact, string brief) => new("taken.reading", fact, new(brief, brief));

    private static Reply Reply(ImmutableArray<SaidPart> parts, string ask, params string[] cautions) => new(
        new(string.Join(' ', parts.Select(p => p.Text.Full)), string.Join(' ', parts.Select(p => p.Text.Brief))),
        [],
        [.. cautions.Select(c => new SpokenCaution("emergency", Brief(c)))],
        Brief(ask),
        [],
        null,
        [],
        null,
        [])
    {
        Parts = parts,
    };
}
