using System.Collections.Immutable;
using System.Globalization;
using Assistant.Channels.Text;
using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using CsCheck;

namespace Assistant.Channels.Tests.Text;

/// <summary>Whatever is said at once, it goes out in two segments of the alphabet with every caution in it.</summary>
public class TextShapePropertyTests
{
    private static readonly TextShape Shape = new(Spoken.Book);
    private static readonly string[] Cautions = [.. Spoken.Book.Keys.Where(k => k.StartsWith("caution.", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];
    private static readonly string[] Questions = [.. Spoken.Book.Keys.Where(k => (k.StartsWith("ask.", StringComparison.Ordinal) || k.StartsWith("act.", StringComparison.Ordinal) || k.StartsWith("confirm.", StringComparison.Ordinal)) && !Spoken.Book.PlaceholdersOf(k).Any()).Order(StringComparer.Ordinal)];
    private static readonly string[] Faults = [.. Spoken.Book.Keys.Where(k => k.StartsWith("fault.", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    private static readonly Gen<SaidPart> Taken = Gen.Select(OneOf([.. FactCatalogue.All.Select(f => f.Name)]), Gen.Double[-40, 600], OneOf(" psig", " °F", " °C", " bar", " inHg vacuum", " micron"))
        .Select(t => new SaidPart("taken.reading", t.Item1, Spoken.Book.Say("taken.reading", UnitSystem.Us, ("fact", t.Item1), ("value", t.Item2.ToString("0.#", CultureInfo.InvariantCulture) + t.Item3))));

    private static readonly Gen<Reply> Replies =
        from taken in Taken.Array[0, 14]
        from fault in OneOf(Faults)
        from isVerdict in Gen.Bool
        from cautions in OneOf(Cautions).Array[0, 7]
        from question in OneOf(Questions)
        from wanted in OneOf([.. FactCatalogue.All.Select(f => f.Name)]).Array[0, 12]
        from words in Gen.String[0, 60]
        select new Reply(Phrase.Empty, [], [.. cautions.Distinct().Select(c => new SpokenCaution(c[8..], Spoken.Book.Say(c, UnitSystem.Us)))], Spoken.Book.Say(question, UnitSystem.Us), [], null, [], null, [])
        {
            Parts = [.. taken, .. isVerdict ? ImmutableArray.Create(new SaidPart("verdict.likely", null, Spoken.Book.Say("verdict.likely", UnitSystem.Us, ("fault", fault)))) : [], new SaidPart("unknown.part", null, new(words, words))],
            AlsoWanted = [.. wanted.Distinct()],
        };

    [Fact]
    public void It_is_of_the_alphabet_and_of_two_segments_at_most() => Replies.Sample(reply => Gsm7.Holds(Shape.Of(reply)) && Gsm7.Segments(Shape.Of(reply)) <= 2, iter: 2000);

    [Fact]
    public void Every_caution_stands_in_it_whole_in_one_of_its_forms() => Replies.Sample(
        reply =>
        {
            var text = Shape.Of(reply);
            return reply.Cautions.All(c => text.Contains(Written(c.Text.Brief), StringComparison.Ordinal)
                || text.Contains(Written(Spoken.Book.Has("text.caution." + c.Code) ? Spoken.Book.Say("text.caution." + c.Code, UnitSystem.Us).Brief : c.Text.Brief), StringComparison.Ordinal));
        },
        iter: 2000);

    [Fact]
    public void The_question_stands_in_it_whole_behind_the_cautions() => Replies.Where(r => r.Cautions.Length <= 4).Sample(
        reply => Shape.Of(reply).Contains(Written(reply.Ask!.Brief), StringComparison.Ordinal), iter: 2000);

    [Fact]
    public void The_verdict_stands_first() => Replies.Where(r => r.Parts.Any(p => p.Key == "verdict.likely") && r.Cautions.Length <= 2).Sample(
        reply => Shape.Of(reply).StartsWith("Likely:", StringComparison.Ordinal), iter: 2000);

    private static Gen<string> OneOf(params string[] of) => Gen.Int[0, of.Length - 1].Select(i => of[i]);

    private static string Written(string text) => Gsm7.Transliterate(text.Replace(" °F", "F", StringComparison.Ordinal).Replace(" °C", "C", StringComparison.Ordinal));
}
