using Assistant.Dialogue.Understanding;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Understanding;

public sealed class RequestReaderTests
{
    private static readonly Understander Understander = LexiconFiles.Understander;

    [Theory]
    [InlineData("ask for the oil level", "oil_level")]
    [InlineData("get me the discharge temperature", "discharge_line_temperature")]
    [InlineData("please read the head again", "discharge_pressure")]
    [InlineData("can you ask Sam for the suction pressure?", "suction_pressure")]
    [InlineData("have him check the sight glass", "sight_glass")]
    [InlineData("tell Frank to read the superheat once more", "superheat")]
    [InlineData("ask for the head and the suction", "discharge_pressure suction_pressure")]
    [InlineData("I need the suction pressure at the coil again please", "suction_pressure_at_evaporator")]
    [InlineData("ask them for the product temp when you can", "product_temperature")]
    [InlineData("check the oil level", "oil_level")]
    public void A_reading_is_asked_for(string text, string facts)
    {
        var understood = Understander.Understand(text, new(null, UnitSystem.Us));

        Assert.Equal((Intent.Command, "ask-for"), (understood.Intent, understood.Command));
        Assert.Equal(facts, string.Join(' ', understood.Requested!.Facts.Select(f => f.Name)));
    }

    [Theory]
    [InlineData("never mind the oil level", "oil_level")]
    [InlineData("no need to ask for the discharge temperature any more", null)]
    [InlineData("forget about the head", "discharge_pressure")]
    [InlineData("don't ask for the suction", "suction_pressure")]
    public void It_is_taken_back(string text, string? fact)
    {
        var understood = Understander.Understand(text, new(null, UnitSystem.Us));

        Assert.Equal(fact is null ? null : "never-mind", understood.Command);
        Assert.Equal(fact, understood.Requested?.Facts.Single().Name);
    }

    [Theory]
    [InlineData("never mind", "undo")]
    [InlineData("read that again", "repeat")]
    [InlineData("get me the report", "report")]
    [InlineData("check on me every 20 minutes, alert Kim", "remind")]
    public void Other_commands_stay_what_they_are(string text, string command) =>
        Assert.Equal(command, Understander.Understand(text, new(null, UnitSystem.Us)).Command);

    [Theory]
    [InlineData("what was the head again")]
    [InlineData("what is the saturation at 117 psi")]
    [InlineData("what should my head be at 95 outside")]
    public void A_question_stays_one(string text) => Assert.Equal(Intent.Question, Understander.Understand(text, new(null, UnitSystem.Us)).Intent);

    [Theory]
    [InlineData("read 22 psi on the suction")]
    [InlineData("head is 210")]
    [InlineData("checked the oil level, it is low")]
    public void A_reading_stays_one(string text) => Assert.Equal(Intent.Answer, Understander.Understand(text, new(null, UnitSystem.Us)).Intent);

    [Fact]
    public void What_names_no_reading_is_handed_on_in_its_words() =>
        Assert.Equal("the flux capacitor", Understander.Understand("ask for the flux capacitor", new(null, UnitSystem.Us)).Requested!.Words);
}
