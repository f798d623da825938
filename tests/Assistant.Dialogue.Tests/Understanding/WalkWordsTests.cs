using Assistant.Dialogue.Tests.Turns;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Understanding;

public sealed class WalkWordsTests
{
    private static readonly Understander Understander = LexiconFiles.Understander;

    public static TheoryData<string, string> Said => new()
    {
        { "charge", "begin charging" },
        { "charge", "Charge it." },
        { "charge", "let's charge" },
        { "charge", "top it up" },
        { "charge", "add some gas" },
        { "close-out", "start the final checks" },
        { "controls", "check the thermostat" },
        { "leak-search", "check for leaks" },
        { "leak-search", "look for the leak" },
        { "no-start", "compressor won't start" },
        { "pressure-hold", "pressure test" },
        { "repair-choice", "repair or replace" },
        { "vacuum", "let's pull a vacuum" },
        { "valve-setting", "set the superheat" },
        { "warm-box", "back to the warm room" },
    };

    [Theory]
    [MemberData(nameof(Said))]
    public void A_walk_is_begun_in_the_words_of_the_trade(string walk, string text) =>
        Assert.Equal(("begin", walk), (Heard(text).Command, Heard(text).Walk));

    [Fact]
    public void Every_walk_has_its_words() =>
        Assert.Equal(Conversation.Walks.All.Select(w => w.Name), Said.Select(row => (string)row[0]).Distinct());

    [Theory]
    [InlineData("charge is 8 kg")]
    [InlineData("added 2 lb of gas")]
    [InlineData("the last tech topped it up")]
    [InlineData("charged it last week")]
    public void What_was_done_or_weighed_begins_no_walk(string text) => Assert.Null(Heard(text).Walk);

    private static Understood Heard(string text) => Understander.Understand(text, new(null, UnitSystem.Us));
}
