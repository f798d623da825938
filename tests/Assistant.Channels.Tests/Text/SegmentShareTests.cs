using Assistant.Channels.Text;
using Assistant.Dialogue.Replies;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;
using Xunit.Abstractions;

namespace Assistant.Channels.Tests.Text;

/// <summary>How many segments what is said takes: each phrase by itself with realistic values, and every reply of the written conversations.</summary>
public class SegmentShareTests(ITestOutputHelper output)
{
    /// <summary>The sentences of the report, the page, the voice and the terminal, which no text message carries.</summary>
    private static readonly string[] Elsewhere = ["report", "sheet", "place.", "talk-", "plot", "voice", "hearing", "page", "word.", "fact.", "fault.", "close.outcome", "text.fact.", "text.caution", "text.also"];

    private static readonly TextShape Shape = new(Spoken.Book);

    [Fact]
    public void Of_the_phrases_with_the_next_question_behind_them_nine_in_ten_take_one_segment_and_none_three()
    {
        var texts = Spoken.Book.Keys.Where(k => !Elsewhere.Any(e => k.StartsWith(e, StringComparison.Ordinal))).Order(StringComparer.Ordinal)
            .Select(key => (Key: key, Text: Shape.Of(Realistic.ReplyOf(key)))).ToList();

        Judge("phrases", texts);
        Assert.True(texts.Count > 300, $"Only {texts.Count} phrases were looked at.");
    }

    [Fact]
    public void Of_the_replies_of_the_written_conversations_nine_in_ten_take_one_segment_and_none_three()
    {
        var replies = Directory.GetFiles(Spoken.PathOf("tests", "transcripts"), "*.txt").Order(StringComparer.Ordinal).SelectMany(WrittenConversation.Replies).ToList();
        var texts = replies.Where(r => !r.Reply.IsWhole).Select(r => (r.Said, Shape.Of(r.Reply))).ToList();

        Judge("replies", texts);
        Assert.All(replies, r => Kept(r.Reply, Shape.Of(r.Reply)));
        Assert.True(texts.Count > 200, $"Only {texts.Count} replies were looked at.");
    }

    private void Judge(string what, List<(string Key, string Text)> texts)
    {
        var bySegments = texts.GroupBy(t => Gsm7.Segments(t.Text)).OrderBy(g => g.Key).Select(g => $"{g.Count()} in {g.Key}");
        var share = texts.Count(t => Gsm7.Segments(t.Text) <= 1) / (double)texts.Count;
        output.WriteLine($"{texts.Count} {what}: {string.Join(", ", bySegments)}; {share:P1} in one segment");
        Assert.All(texts, t => Assert.True(Gsm7.Segments(t.Text) <= 2, $"{t.Key}: {Gsm7.Segments(t.Text)} segments: {t.Text}"));
        Assert.True(share >= 0.9, $"{share:P1} in one segment; in two: {string.Join(" | ", texts.Where(t => Gsm7.Segments(t.Text) > 1).Take(12).Select(t => t.Key))}");
    }

    // Each caution in one of its forms and the whole question stand in the text.
    private static void Kept(Reply reply, string text)
    {
        foreach (var caution in reply.Cautions)
        {
            var key = "text.caution." + caution.Code;
            string[] forms = [caution.Text.Brief, Spoken.Book.Has(key) ? Spoken.Book.Say(key, UnitSystem.Us).Brief : caution.Text.Brief];
            Assert.Contains(forms, form => text.Contains(Plain(form), StringComparison.Ordinal));
        }

        Assert.Contains(Plain(reply.Ask?.Brief ?? ""), text, StringComparison.Ordinal);
    }

    private static string Plain(string text) => Gsm7.Transliterate(text.Replace(" °F", "F", StringComparison.Ordinal).Replace(" °C", "C", StringComparison.Ordinal).Replace(" K", "K", StringComparison.Ordinal));
}

/// <summary>Phrases filled with the values of a working day.</summary>
internal static class Realistic
{
    private static readonly Dictionary<string, ReasonPart> Values = new ReasonPart[]
    {
        ("site", "Invented Diner, Pine Street"), ("unit", "walk-in cooler, rear"), ("person", "Alexandra"), ("fact", "suction_line_temperature_at_compressor"), ("fault", "fault.condenser-airflow"),
        ("faults", "short of refrigerant; the expansion valve starves the coil; too little air over the coil in the room"), ("list", "suction pressure 22 psig, head pressure 201 psig, sight glass flashing"),
        ("reason", "That does not go together with the head pressure: read both again."), ("question", "The sight glass after the drier: clear, flashing, or empty?"), ("words", "blorp, 46.5"),
        ("refrigerant", "R-449A"), ("date", "2026-07-14"), ("place", "the flare nut at the receiver"), ("places", "the flare nut; the distributor"), ("standing", "established"), ("other", "201 psig"),
        ("link", "https://coldwalk.example/p/0197f2c4a1b27d3e"), ("count", "23"), ("skipped", "2"), ("what", "head pressure 201 psig"),
    }.ToDictionary(p => p.Name);

    public static Reply ReplyOf(string key)
    {
        var parts = Spoken.Book.PlaceholdersOf(key).Select(name => Values.TryGetValue(name, out var value) ? value : (ReasonPart)(name, "123.5 °F")).ToArray();
        var phrase = Spoken.Book.Say(key, UnitSystem.Us, parts);
        var isQuestion = key.StartsWith("ask.", StringComparison.Ordinal) || key.StartsWith("act.", StringComparison.Ordinal) || key.StartsWith("confirm.", StringComparison.Ordinal) || key.StartsWith("offer.", StringComparison.Ordinal);
        var reply = new Reply(phrase, [], [], isQuestion ? phrase : Spoken.Book.Say("ask.discharge_pressure", UnitSystem.Us), [], null, [], null, []) { AlsoWanted = ["suction_pressure", "liquid_line_temperature"] };
        return key.StartsWith("caution.", StringComparison.Ordinal) ? reply with { Say = Phrase.Empty, Cautions = [new(key[8..], phrase)] }
            : key.StartsWith("reason.", StringComparison.Ordinal) ? reply with { Say = Phrase.Empty, Because = [phrase] }
            : isQuestion ? reply with { Say = Phrase.Empty }
            : reply with { Parts = [new(key, null, phrase)] };
    }
}
