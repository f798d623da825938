using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Hearing;

namespace Assistant.Voice.Tests.Dialogues;

/// <summary>What nobody asked for: commands beside an answer, calls for help, and the words offered once something was missed.</summary>
[Collection(HearingCollection.Name)]
public sealed class UnaskedTests(HearingParts hearing)
{
    private const double Clear = 20;

    private VoiceDialogue Dialogue => hearing.Parts.Dialogue;

    [Fact]
    public void An_answer_is_likelier_than_a_command_that_is_not_clear_and_the_command_comes_once_it_was_refused()
    {
        var first = Dialogue.Hear(Ask("evaporator_fans"), Unclear("help", "all"));
        var refused = Dialogue.Hear(first.State, Words("wrong", Clear));
        var second = Dialogue.Hear(refused.State, Unclear("help", "some"));

        Assert.Equal("All. Correct, or wrong?", first.Say);
        Assert.Null(first.Send);
        Assert.Equal("Help. Correct, or wrong?", second.Say);
        Assert.Equal("help", Dialogue.Hear(second.State, Words("correct", Clear)).Send);
    }

    [Fact]
    public void A_wait_that_may_have_been_done_is_asked_about_and_does_not_wait()
    {
        var step = Dialogue.Hear(Step("ok"), Unclear("hold on", "all done"));

        Assert.Equal("Ok. Correct, or wrong?", step.Say);
        Assert.Equal("ok", Dialogue.Hear(step.State, Words("correct", Clear)).Send);
        Assert.Equal(VoicePhase.Resuming, Dialogue.Hear(Step("ok"), Words("hold on", Clear)).State.Phase);
    }

    [Fact]
    public void A_speed_or_a_stop_that_may_have_been_an_answer_is_missed_and_changes_nothing()
    {
        var step = Dialogue.Hear(Ask("evaporator_fans"), new(HeardKind.Words, "slower", -14, 0.5));

        Assert.Equal(1, step.State.Misses);
        Assert.Equal(Ask("evaporator_fans").Style, step.State.Style);
    }

    [Fact]
    public void What_was_just_refused_is_not_heard_at_the_next_try_and_is_again_at_the_one_after()
    {
        var readBack = Dialogue.Hear(Ask("evaporator_fans"), Words("some", null));
        var refused = Dialogue.Hear(readBack.State, Words("wrong", Clear));
        var missed = Dialogue.Hear(refused.State, Miss);

        Assert.Null(Dialogue.Grammar(refused.State).MeaningOf("some"));
        Assert.Equal("choice:all", Dialogue.Grammar(refused.State).MeaningOf("all"));
        Assert.Equal("choice:some", Dialogue.Grammar(missed.State).MeaningOf("some"));
    }

    [Fact]
    public void The_only_answer_there_is_can_always_be_given()
    {
        var readBack = Dialogue.Hear(Step("ok"), Words("okay", 0.1));
        var refused = Dialogue.Hear(readBack.State, Words("wrong", Clear));

        Assert.Equal("step:ok", Dialogue.Grammar(refused.State).MeaningOf("okay"));
    }

    [Fact]
    public void A_choice_missed_twice_is_offered_by_number_and_read_back_by_name()
    {
        var state = Dialogue.Hear(Ask("evaporator_fans"), Miss).State;
        var offer = Dialogue.Hear(state, Miss);
        var heard = Dialogue.Hear(offer.State, Words("number two", null));

        Assert.Equal("Say number one for all, number two for some, number three for none.", offer.Say);
        Assert.Equal("Some. Correct, or wrong?", heard.Say);
        Assert.Null(heard.Send);
        Assert.Equal("some", Dialogue.Hear(heard.State, Words("correct", Clear)).Send);
        Assert.Null(Dialogue.Grammar(Ask("evaporator_fans")).MeaningOf("number two"));
    }

    [Fact]
    public void A_step_missed_offers_the_words_it_hears_well()
    {
        var offer = Dialogue.Hear(Step("done", "later"), Miss);

        Assert.Equal("Say done, finished, later, or not today.", offer.Say);
        Assert.All(offer.State.Offered, o => Assert.Equal("step:" + o.Text, Dialogue.Grammar(offer.State).MeaningOf(o.Words)));
    }

    [Theory]
    [InlineData("leave the call", "leave the visit")]
    [InlineData("shift change", "hand over")]
    [InlineData("finished", "all done")]
    [InlineData("scratch that", "undo")]
    public void What_acts_on_the_visit_is_sent_only_after_a_yes_however_clear_it_was(string said, string sent)
    {
        var readBack = Dialogue.Hear(Ask("evaporator_fans"), Words(said, 100));

        Assert.Null(readBack.Send);
        Assert.Equal($"{char.ToUpperInvariant(sent[0])}{sent[1..]}. Correct, or wrong?", readBack.Say);
        Assert.Equal(sent, Dialogue.Hear(readBack.State, Words("correct", Clear)).Send);
        Assert.Null(Dialogue.Hear(readBack.State, Words("correct", 0.5)).Send);
    }

    [Fact]
    public void Who_is_here_is_answered_at_once() => Assert.Equal("who", Dialogue.Hear(Ask("evaporator_fans"), Words("who is here", Clear)).Send);

    [Fact]
    public void A_call_for_help_that_hardly_fits_is_asked_about_and_one_that_fits_is_passed_on()
    {
        var asked = Dialogue.Hear(Ask("evaporator_fans"), new(HeardKind.Words, "mayday", -13));

        Assert.Equal("Emergency. Correct, or wrong?", asked.Say);
        Assert.Equal("emergency", Dialogue.Hear(asked.State, Words("yes", Clear)).Send);
        Assert.Equal("emergency", Dialogue.Hear(Ask("evaporator_fans"), new(HeardKind.Words, "mayday", -9)).Send);
        Assert.Null(Dialogue.HearWhileSpeaking(Ask("evaporator_fans"), new(HeardKind.Words, "mayday", -13)).Send);
    }

    [Fact]
    public void Asleep_its_name_is_likelier_than_a_call_for_help_that_hardly_fits()
    {
        var asleep = VoiceDialogue.Sleep(Ask("evaporator_fans"));

        Assert.Equal(VoicePhase.Answer, Dialogue.Hear(asleep, new(HeardKind.Words, "gas alarm", -16, null, new(HeardKind.Words, "coldwalk", -17))).State.Phase);
        Assert.Equal(new(asleep, ""), Dialogue.Hear(asleep, new(HeardKind.Words, "gas alarm", -19, null, new(HeardKind.NotForUs, "coldwalk", -40))));
        Assert.Equal("emergency", Dialogue.Hear(asleep, new(HeardKind.Words, "gas alarm", -5)).Send);
    }

    private static Heard Miss => new(HeardKind.NotForUs, null, -40);

    private VoiceState Ask(string fact) => Dialogue.Start(Question(fact, [.. FactCatalogue.Find(fact)!.Choices]), UnitSystem.Us).State;

    private VoiceState Step(params string[] choices) => Dialogue.Start(Question(null, choices), UnitSystem.Us).State;

    private static Reply Question(string? fact, string[] choices) => new(Phrase.Empty, [], [], new("What is it?", "What is it?"), [.. choices], fact, [], null, []);

    private static Heard Words(string words, double? margin) => new(HeardKind.Words, words, 0, margin);

    private static Heard Unclear(string command, string answer) => new(HeardKind.Words, command, -6, 3, new(HeardKind.Words, answer, -9));
}
