using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Tests.Turns;

/// <summary>When a verdict is said, and what is said of it later.</summary>
public class VerdictTellingTests
{
    [Fact]
    public void A_verdict_is_said_once()
    {
        var talk = new Conversation(assess: facts => facts.Is(FactCatalogue.SightGlass, "flashing")
            ? Conversation.Judging((FaultCode.Undercharge, Standing.Likely))
            : Conversation.Nothing);

        Assert.Contains("Likely: short of refrigerant.", talk.Say("sight_glass=flashing").Say.Full, StringComparison.Ordinal);
        Assert.DoesNotContain("Likely", talk.Say("R404A").Say.Full, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_that_adds_to_a_likely_verdict_is_answered_with_what_it_showed_once()
    {
        var likely = Conversation.Judging((FaultCode.Undercharge, Standing.Likely));
        var fuller = likely with { Findings = [likely.Findings[0] with { Because = [.. likely.Findings[0].Because, new("reason.sight-glass-flashing")] }] };
        var talk = new Conversation(assess: facts => !facts.Has(FactCatalogue.Refrigerant) ? Conversation.Nothing : facts.Is(FactCatalogue.SightGlass, "flashing") ? fuller : likely);
        var reason = Conversation.Book.Say(new Reason("reason.sight-glass-flashing"), UnitSystem.Us);

        talk.Say("ambient_temperature=88 degF; refrigerant=R404A");

        Assert.Equal(reason.Full, Assert.Single(talk.Say("sight_glass=flashing").Because).Full);
        Assert.Empty(talk.Say("compressor=running").Because);
    }
}
