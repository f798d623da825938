using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Tests.Turns;

public sealed class KnownAssessmentsTests
{
    [Fact]
    public void The_rules_are_asked_once_for_the_same_facts_however_often_a_turn_needs_them()
    {
        var asked = new List<FactSet>();
        var talk = new Conversation(
            assess: facts =>
            {
                asked.Add(facts);
                return Conversation.Nothing;
            });

        talk.SayAll("ok", "status", "41 degF", "status", "why", "box_temperature_check=42 degF; setpoint=38 degF", "where");

        Assert.Equal(asked.Distinct().Count(), asked.Count);
        Assert.Contains(asked, facts => facts.Has(FactCatalogue.Setpoint));
    }
}
