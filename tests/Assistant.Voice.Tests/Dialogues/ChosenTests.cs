using Assistant.Dialogue.Replies;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Hearing;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Tests.Dialogues;

/// <summary>What is one of several words offered, without a fact: options of a walk, offered walks, two people's readings, the place of a leak.</summary>
[Collection(HearingCollection.Name)]
public sealed class ChosenTests(HearingParts hearing)
{
    private const double Clear = 20;

    private VoiceDialogue Dialogue => hearing.Parts.Dialogue;

    [Theory]
    [InlineData("repair-choice", "part", "flare nut", "Flare. Correct, or wrong?", "flare", "flare|take-apart valve|stem or core|pipe or braze|coil or vessel")]
    [InlineData("leak-search", "at-coil", "it beeps", "It sniffs. Correct, or wrong?", "it sniffs", "nothing|it sniffs")]
    [InlineData("leak-search", "more", "more", "Another. Correct, or wrong?", "another", "another|no more")]
    [InlineData("leak-search", "more", "all done", "No more. Correct, or wrong?", "no more", "another|no more")]
    [InlineData("leak-search", "spot", "leak at the flare nut", "Leak at the flare nut. Correct, or wrong?", "leak at the flare nut", "ok")]
    [InlineData("leak-search", "spot-unnamed", "distributor nut", "Leak at the distributor nut. Correct, or wrong?", "leak at the distributor nut", "ok")]
    public void What_is_chosen_is_read_back_and_sent_only_after_a_clear_yes(string walk, string stop, string said, string readBack, string sent, string choices)
    {
        var heard = Hear(At(walk, stop, choices), said);

        Assert.Null(heard.Send);
        Assert.Equal(readBack, heard.Say);
        Assert.Null(Hear(heard.State, "correct", 0.5).Send);
        Assert.Null(Hear(heard.State, "wrong").Send);
        Assert.Equal(sent, Hear(heard.State, "correct").Send);
    }

    [Fact]
    public void A_command_that_the_conversation_would_take_for_an_option_is_not_heard_as_one()
    {
        var grammar = Dialogue.Grammar(At("leak-search", "more", "another|no more"));

        Assert.Null(grammar.MeaningOf("tell me more"));
        Assert.Null(grammar.MeaningOf("finished"));
        Assert.Equal("command:skip", grammar.MeaningOf("skip"));
        Assert.Equal("command:more", Dialogue.Grammar(At("leak-search", "at-coil", "nothing|it sniffs")).MeaningOf("tell me more"));
    }

    [Fact]
    public void Where_a_leak_is_can_be_said_only_where_the_walk_waits_for_it() =>
        Assert.Null(Dialogue.Grammar(At("leak-search", "picture", "ok")).MeaningOf("leak at the flare nut"));

    [Fact]
    public void An_option_missed_is_offered_in_its_own_words_and_then_by_number()
    {
        var first = Miss(At("leak-search", "at-coil", "nothing|it sniffs"));
        var second = Miss(first.State);
        var heard = Hear(second.State, "number two");

        Assert.Equal("Say nothing, or it sniffs.", first.Say);
        Assert.Equal("Say number one for nothing, number two for it sniffs.", second.Say);
        Assert.Equal("It sniffs. Correct, or wrong?", heard.Say);
        Assert.Equal("it sniffs", Hear(heard.State, "correct").Send);
        Assert.Equal("Say yes, later, or not today.", Miss(At("warm-box", "act", "yes|later")).Say);
    }

    [Fact]
    public void A_list_of_numbers_that_takes_too_long_comes_a_few_at_a_time()
    {
        var asked = At("repair-choice", "part", "flare|take-apart valve|stem or core|pipe or braze|coil or vessel");
        var offer = Miss(Miss(asked with { Style = asked.Style.Slower.Slower.Slower }).State);

        Assert.EndsWith("number five for coil or vessel.", Miss(Miss(asked).State).Say, StringComparison.Ordinal);
        var more = Hear(offer.State, "more");
        Assert.InRange(offer.State.Style.Estimate(offer.Say), TimeSpan.Zero, ReplySpeech.Longest);
        Assert.StartsWith("Say number one for flare, number two for take-apart valve", offer.Say, StringComparison.Ordinal);
        Assert.EndsWith("or say more.", offer.Say, StringComparison.Ordinal);
        Assert.EndsWith("number five for coil or vessel.", more.Say, StringComparison.Ordinal);
        Assert.Equal("Coil or vessel. Correct, or wrong?", Hear(more.State, "number five").Say);
    }

    [Fact]
    public void Which_of_two_peoples_readings_counts_is_said_by_its_place_and_read_back_with_the_name_and_digit_by_digit()
    {
        var asked = At("warm-box", "box", "Lee 117 psig|Sam 121.5 psig") with { Asked = Reply("warm-box", "box", "Lee 117 psig|Sam 121.5 psig", "discharge_pressure") };
        var heard = Hear(asked, "the second");

        Assert.Null(heard.Send);
        Assert.Equal("Sam 1 2 1 point 5 P S I. Correct, or wrong?", heard.Say);
        Assert.Equal("Sam 121.5 psig", Hear(heard.State, "correct").Send);
        Assert.StartsWith("One seventeen: 1 1 7 P S I.", Hear(asked, "one seventeen").Say, StringComparison.Ordinal);
        Assert.True(Dialogue.Grammar(asked).IsPassing);
    }

    [Fact]
    public void A_unit_left_open_is_said_alone_and_read_back()
    {
        var asked = At("warm-box", "suction", "psig|bar") with { Asked = Reply("warm-box", "suction", "psig|bar", "suction_pressure") with { Units = ["psig", "bar"] } };

        Assert.Equal("P S I. Correct, or wrong?", Hear(asked, "psi").Say);
        Assert.Equal("psig", Hear(Hear(asked, "psi").State, "correct").Send);
    }

    private VoiceState At(string walk, string stop, string choices) => Dialogue.Start(Reply(walk, stop, choices, null), UnitSystem.Us).State;

    private static Reply Reply(string walk, string stop, string choices, string? fact) =>
        new(Phrase.Empty, [], [], new("What is it?", "What is it?"), [.. choices.Split('|')], fact, [], new(walk, stop, "unit"), []);

    private VoiceStep Miss(VoiceState state) => Dialogue.Hear(state, new(HeardKind.NotForUs, null, -40));

    private VoiceStep Hear(VoiceState state, string words, double margin = Clear) => Dialogue.Hear(state, new(HeardKind.Words, words, 0, margin));
}
