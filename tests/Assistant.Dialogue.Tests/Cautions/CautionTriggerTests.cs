using Assistant.Dialogue.Tests.Turns;
using Assistant.Trade;
using Assistant.Trade.Cautions;

namespace Assistant.Dialogue.Tests.Cautions;

/// <summary>Every caution is given where its trigger says, whichever it is: surroundings, a reading, a stop of a walk, or the hands' next step.</summary>
public class CautionTriggerTests
{
    private static readonly string[] Short =
    [
        "ok", "50", "51", "38", "4", "yes", "all", "good", "46", "none", "yes", "warm", "txv", "ok", "85", "running", "all", "clean", "flashing", "205 psi", "30 psi", "90", "55",
        "standing pressure 60 psig", "...act",
    ];

    /// <summary>Caution, where it fires, what the record holds, and what is said up to the moment it has to be given.</summary>
    public static TheoryData<string, string, string[], string[]> Triggers { get; } = new()
    {
        { "trapped-inside", "before the door of the room shuts", [], [] },
        { "lone-work", "at the beginning of a call alone", [], [] },
        { "cold-stress", "in a freezer", ["application = freezer"], [] },
        { "cold-stress", "in a room that cold", [], ["ok", "refrigerant is R404A", "cooler", "-15"] },
        { "oxygen-displacement", "before a leak is looked for", ["refrigerant = R404A"], ["leak search"] },
        { "oxygen-displacement", "with carbon dioxide", ["refrigerant = R744"], [] },
        { "flammable-refrigerant", "with a refrigerant that burns", ["refrigerant = R290"], [] },
        { "flammable-refrigerant", "with one that burns a little", ["refrigerant = R454C"], [] },
        { "high-pressure-co2", "with carbon dioxide", ["refrigerant = R744"], [] },
        { "ammonia", "with ammonia", ["refrigerant = R717"], [] },
        { "moving-fan", "before hands go near the room's fans", ["refrigerant = R404A", "application = cooler"], ["...fans"] },
        { "food-safety", "when the goods are too warm", ["refrigerant = R404A"], ["product is 46"] },
        { "ice-removal", "before the ice is cleared", ["refrigerant = R404A", "application = cooler"], ["...coil-ice", "blocked"] },
        { "lock-out", "before the ice is cleared", ["refrigerant = R404A", "application = cooler"], ["...coil-ice", "blocked"] },
        { "electrical", "before the solenoid is looked at", ["refrigerant = R404A", "application = cooler"], ["...solenoid"] },
        { "electrical", "before live parts and capacitors", ["refrigerant = R404A"], ["compressor wont start", "yes"] },
        { "electrical", "before the compressor's terminals", ["refrigerant = R404A"], ["compressor wont start", "yes", "...windings"] },
        { "ladder", "before the climb", ["refrigerant = R404A", "application = cooler"], ["...at-the-unit"] },
        { "roof-weather", "before the climb", ["refrigerant = R404A", "application = cooler"], ["...at-the-unit"] },
        { "hot-surface", "at the running compressor", ["refrigerant = R404A", "application = cooler"], ["...compressor"] },
        { "liquid-refrigerant", "before gauges go on", ["refrigerant = R404A", "application = cooler"], ["...head"] },
        { "liquid-refrigerant", "before refrigerant is recovered", ["refrigerant = R404A"], ["leak search", "ok", "20", "5 psig"] },
        { "no-venting", "before refrigerant is recovered", ["refrigerant = R404A"], ["leak search", "ok", "20", "5 psig"] },
        { "overfull-cylinder", "before a recovery cylinder is filled", ["refrigerant = R404A"], ["leak search", "ok", "20", "5 psig"] },
        { "nitrogen", "before nitrogen goes in", ["refrigerant = R404A", "low_side_design_pressure = 150 psig"], ["leak search", "ok", "20", "5 psig", "ok", "allowed"] },
        { "trapped-liquid", "before valves are shut on a part", ["refrigerant = R404A"], ["repair", "coil", "no", "none", "good access", "yes"] },
        { "trapped-liquid", "before the vacuum is shut in", ["refrigerant = R404A"], ["vacuum", "ok", "60", "400 micron"] },
        { "hot-work", "before the torch is lit", ["refrigerant = R404A"], ["repair", "pipe", "yes", "new part", "good access", "no", "ok", "ok", "ok", "ok"] },
        { "burnt-refrigerant", "before the flame", ["refrigerant = R404A"], ["repair", "pipe", "yes", "new part", "good access", "no", "ok", "ok", "ok"] },
        { "cylinder-heating", "when a cylinder is warm", ["refrigerant = R404A"], ["cylinder temperature 130"] },
        { "liquid-to-suction", "before it is charged", ["refrigerant = R404A", "application = cooler"], Short },
        { "emergency", "when somebody is hurt", [], ["I'm hurt"] },
        { "emergency", "when it burns", [], ["there is a fire"] },
        { "emergency", "when the gas alarm sounds", [], ["the gas alarm is going off"] },
    };

    [Theory]
    [MemberData(nameof(Triggers))]
    public void A_caution_is_given_where_its_trigger_says(string caution, string when, string[] record, string[] lines)
    {
        var scene = new CautionScene(record).Say(lines);

        Assert.True(scene.Given.Contains(caution), $"{caution} {when}: stop {scene.Stop}, given {string.Join(", ", scene.Given)}; {scene.Reply.Say.Full} {scene.Reply.Ask?.Full}");
    }

    [Fact]
    public void No_caution_is_without_a_trigger_and_none_without_words_in_both_lengths() => Assert.All(Enum.GetValues<CautionCode>(), code =>
    {
        var caution = Codes.Of(code);
        Assert.Contains(Triggers, row => (string)row[0] == caution);
        var words = Conversation.Book.Say("caution." + caution, Assistant.Trade.Quantities.UnitSystem.Us);
        Assert.NotEqual("", words.Full);
        Assert.NotEqual("", words.Brief);
        // A brief one is said by voice and fits beside a question in a text message of two segments (153 characters each).
        Assert.InRange(words.Brief.Length, 10, 75);
    });
}
