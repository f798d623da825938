namespace Assistant.Dialogue.Tests.Cautions;

/// <summary>Once per person, place and day - and again right before the hazardous step, every time.</summary>
public class CautionOnceTests
{
    // What brings the caution, and what brings the same again.
    public static TheoryData<string, string, string> Readings { get; } = new()
    {
        { "food-safety", "product is 46", "product is 47" },
        { "flammable-refrigerant", "refrigerant is R290", "box is 51" },
        { "ammonia", "refrigerant is R717", "box is 51" },
        { "high-pressure-co2", "refrigerant is R744", "box is 51" },
        { "cylinder-heating", "cylinder temperature 130", "cylinder temperature 131" },
        { "cold-stress", "application is freezer", "box is 5" },
    };

    [Theory]
    [MemberData(nameof(Readings))]
    public void It_is_given_once_to_a_person_at_a_place_on_a_day(string caution, string first, string again)
    {
        var scene = new CautionScene().Say("ok", first);
        Assert.Contains(caution, scene.Given);
        Assert.DoesNotContain(caution, scene.Say(again).Given);

        Assert.Contains(caution, scene.Say("@ben " + again).Given);
        Assert.DoesNotContain(caution, scene.Say("@ben " + again).Given);

        Assert.Contains(caution, scene.Say("+24h", again).Given);
        Assert.DoesNotContain(caution, scene.Say(again).Given);
    }

    [Fact]
    public void At_another_place_it_is_given_again()
    {
        var scene = new CautionScene("refrigerant = R290", "application = cooler");
        Assert.Contains("flammable-refrigerant", scene.Given);
        Assert.DoesNotContain("flammable-refrigerant", scene.Say("ok", "50").Given);
        Assert.Contains("flammable-refrigerant", scene.Say("...ambient").Given);
    }

    // What leads to the step, and what leads to it anew on the same day.
    public static TheoryData<string, string[], string[]> Steps { get; } = new()
    {
        { "no-venting liquid-refrigerant overfull-cylinder", ["leak search", "ok", "20", "5 psig"], ["undo", "4 psig"] },
        { "nitrogen", ["leak search", "ok", "20", "5 psig", "ok", "allowed"], ["undo", "dry nitrogen only"] },
        { "lock-out no-venting liquid-refrigerant trapped-liquid", ["repair", "flare", "no", "new part", "good access", "no"], ["ok", "ok", "ok", "ok", "later", "repair", "flare", "new part", "good access", "no"] },
        { "hot-work", ["repair", "pipe", "yes", "new part", "good access", "no", "ok"], ["ok", "ok", "ok"] },
        { "trapped-liquid", ["vacuum", "ok", "60", "400 micron"], ["undo", "410 micron"] },
        { "electrical", ["compressor wont start", "yes", "ok", "all there", "skip", "not pulled in"], ["undo", "pulled in"] },
    };

    [Theory]
    [MemberData(nameof(Steps))]
    public void Right_before_the_hazardous_step_it_is_given_every_time(string cautions, string[] lines, string[] again)
    {
        var scene = new CautionScene("refrigerant = R404A", "application = cooler", "low_side_design_pressure = 150 psig").Say(lines);
        Assert.All(cautions.Split(' '), caution => Assert.Contains(caution, scene.Given));

        scene.Say(again);
        Assert.True(cautions.Split(' ').All(scene.Given.Contains), $"again: stop {scene.Stop}, given {string.Join(", ", scene.Given)}; {scene.Reply.Say.Full}");
    }

    [Fact]
    public void Every_step_that_warns_of_a_hazard_is_in_a_walk_as_one()
    {
        var hazards = Turns.Conversation.Walks.All.SelectMany(w => w.Stops).SelectMany(s => s.Hazards).Distinct().Count();

        Assert.InRange(hazards, 14, 25);
    }
}
