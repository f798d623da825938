using System.Collections.Immutable;
using Assistant.Channels.Shaping;
using Assistant.Channels.Tests.Text;
using Assistant.Channels.Text;
using Assistant.Dialogue.Replies;
using Assistant.Trade.Cautions;
using Assistant.Trade.Quantities;

namespace Assistant.Channels.Tests.Shaping;

/// <summary>On every channel each caution is said whole, however long the rest is and however many come at once.</summary>
public class CautionShapingTests
{
    private static readonly TextShape Texts = new(Spoken.Book);

    public static TheoryData<string> Codes { get; } = [.. Enum.GetValues<CautionCode>().Select(c => Trade.Codes.Of(c))];

    [Theory]
    [MemberData(nameof(Codes))]
    public void A_caution_is_never_dropped_for_length(string code)
    {
        var caution = Caution(code);
        var reply = Long([caution]);

        Assert.Contains(caution.Text.Full, ReplyShaping.TerminalText(reply), StringComparison.Ordinal);
        var chat = ReplyShaping.For("emulator", reply);
        Assert.Contains(caution.Text.Full, chat.Text, StringComparison.Ordinal);
        Assert.Contains(caution.Text.Brief, chat.Speak, StringComparison.Ordinal);
        var text = Texts.Of(reply);
        Assert.Contains(Tightest(caution), text, StringComparison.Ordinal);
        Assert.EndsWith("What now?", text, StringComparison.Ordinal);
    }

    [Fact]
    public void All_of_them_at_once_are_all_said()
    {
        var cautions = Enum.GetValues<CautionCode>().Select(c => Caution(Trade.Codes.Of(c))).ToImmutableArray();
        var reply = Long(cautions);

        Assert.All(cautions, c => Assert.Contains(c.Text.Full, ReplyShaping.TerminalText(reply), StringComparison.Ordinal));
        Assert.All(cautions, c => Assert.Contains(c.Text.Brief, ReplyShaping.For("emulator", reply).Speak, StringComparison.Ordinal));
        Assert.All(cautions, c => Assert.Contains(Tightest(c), Texts.Of(reply), StringComparison.Ordinal));
    }

    // In a text message beside much else: the fewest words that still warn, a number closed up to its degrees.
    private static string Tightest(SpokenCaution caution)
    {
        var words = new TextWords(Spoken.Book).Warning(caution);
        Assert.InRange(words.Length, 6, caution.Text.Brief.Length);
        return words.Replace(" °F", "F", StringComparison.Ordinal).Replace(" °C", "C", StringComparison.Ordinal);
    }

    private static SpokenCaution Caution(string code) => new(code, Spoken.Book.Say("caution." + code, UnitSystem.Us));

    private static Reply Long(ImmutableArray<SpokenCaution> cautions)
    {
        var words = string.Join(' ', Enumerable.Repeat("words that go on and on", 40));
        return new(new(words, words), [new(words, words), new(words, words)], cautions, new("What now?", "What now?"), [], null, [], null, []);
    }
}
