using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Hearing;

namespace Assistant.Voice.Tests.Dialogues;

[Collection(HearingCollection.Name)]
public sealed class VoiceDialogueTests(HearingParts hearing)
{
    private const double Clear = 20;

    private VoiceDialogue Dialogue => hearing.Parts.Dialogue;

    [Fact]
    public void A_number_is_read_back_digit_by_digit_and_sent_only_after_yes()
    {
        var asked = Ask("discharge_pressure");

        var readBack = Hear(asked, "one seventeen psi");
        var confirmed = Hear(readBack.State, "correct", Clear);

        Assert.Null(readBack.Send);
        Assert.Equal("One seventeen: 1 1 7 P S I. Correct, or wrong?", readBack.Say);
        Assert.Equal("117 psig", confirmed.Send);
    }

    [Fact]
    public void A_yes_that_is_not_told_clearly_from_no_stores_nothing()
    {
        var readBack = Hear(Ask("discharge_pressure"), "two twenty six");

        var unclear = Hear(readBack.State, "yes", 0.5);

        Assert.Null(unclear.Send);
        Assert.Equal("Say correct, or wrong.", unclear.Say);
        Assert.Equal(readBack.State.Pending, unclear.State.Pending);
        Assert.Equal("226 psig", Hear(unclear.State, "correct", Clear).Send);
    }

    [Fact]
    public void Words_between_read_back_and_yes_that_are_not_for_us_never_confirm()
    {
        var state = Hear(Ask("discharge_pressure"), "two twenty six").State;
        var steps = new List<VoiceStep>();
        for (var i = 0; i < 3; i++)
        {
            steps.Add(Dialogue.Hear(state, new(HeardKind.NotForUs, "yes", -30, Clear)));
            state = steps[^1].State;
        }

        Assert.All(steps, s => Assert.Null(s.Send));
        Assert.Null(state.Pending);
        Assert.StartsWith("Not taken.", steps[^1].Say, StringComparison.Ordinal);
    }

    [Fact]
    public void After_two_misses_it_offers_digits_and_reads_those_back_too()
    {
        var first = Hear(Hear(Ask("discharge_pressure"), "two twenty six").State, "wrong");
        var second = Hear(Hear(first.State, "two twenty five").State, "no");
        var digits = Hear(second.State, "one one seven go");

        Assert.Equal(VoicePhase.Answer, first.State.Phase);
        Assert.Contains("Digit by digit, in P S I", second.Say, StringComparison.Ordinal);
        Assert.Null(digits.Send);
        Assert.StartsWith("1 1 7 P S I.", digits.Say, StringComparison.Ordinal);
        Assert.Equal("117 psig", Hear(digits.State, "correct", Clear).Send);
    }

    [Fact]
    public void Digits_may_come_in_pieces_be_cleared_and_have_a_point_and_a_sign()
    {
        var state = Hear(Hear(Ask("box_temperature"), null).State, null).State;
        state = Hear(state, "nine nine").State;
        state = Hear(state, "clear").State;
        state = Hear(state, "minus one").State;
        var step = Hear(state, "two point five go");

        Assert.StartsWith("Minus 1 2 point 5 degrees Fahrenheit.", step.Say, StringComparison.Ordinal);
        Assert.Equal("-12.5 degF", Hear(step.State, "correct", Clear).Send);
    }

    [Fact]
    public void Numbers_that_sound_alike_are_asked_about_by_name_where_the_sound_does_not_tell()
    {
        var unclear = Hear(Ask("suction_pressure"), "thirty", 0.2);
        var chosen = Hear(unclear.State, "one three", Clear);
        var clear = Hear(Ask("suction_pressure"), "thirty", Clear);

        Assert.Equal("Thirty, 3 0; or thirteen, 1 3? Say the digits.", unclear.Say);
        Assert.StartsWith("Thirteen: 1 3 P S I.", chosen.Say, StringComparison.Ordinal);
        Assert.Null(chosen.Send);
        Assert.Equal("Thirty: 3 0 P S I. Correct, or wrong?", clear.Say);
    }

    [Theory]
    [InlineData("differential", "twenty five", "2 5 degrees Fahrenheit can not be: 0 to 20 here. Once more.")]
    [InlineData("setpoint", "sixty nine", "6 9 degrees Fahrenheit can not be there. Once more.")]
    public void What_can_not_be_is_said_before_any_read_back(string fact, string words, string said)
    {
        var step = Hear(Ask(fact), words, Clear);

        Assert.StartsWith(said, step.Say, StringComparison.Ordinal);
        Assert.Null(step.State.Pending);
    }

    [Fact]
    public void A_choice_is_a_value_too_and_is_stored_only_after_yes()
    {
        var heard = Hear(Ask("condenser_coil"), "dirty", Clear);

        Assert.Null(heard.Send);
        Assert.Equal("Dirty. Correct, or wrong?", heard.Say);
        Assert.Equal("dirty", Hear(heard.State, "correct", Clear).Send);
    }

    [Fact]
    public void A_command_told_clearly_is_sent_at_once_and_otherwise_read_back()
    {
        Assert.Equal("skip", Hear(Ask("condenser_coil"), "skip", Clear).Send);
        Assert.Null(Hear(Ask("condenser_coil"), "skip", 0.3).Send);
    }

    [Fact]
    public void A_command_nobody_asked_for_must_be_clearer_than_an_answer_to_a_step()
    {
        var step = Dialogue.Start(Question("condenser_coil") with { AskedFact = null, Choices = ["ok"] }, UnitSystem.Us).State;

        Assert.Equal("ok", Hear(step, "okay", 4).Send);
        Assert.Null(Hear(Ask("condenser_coil"), "help", 4).Send);
        Assert.Null(Dialogue.Hear(Ask("condenser_coil"), new(HeardKind.Words, "help", -9, Clear)).Send);
        Assert.Equal(VoicePhase.Answer, Hear(Ask("condenser_coil"), "wait", 4).State.Phase);
        Assert.Equal(VoicePhase.Resuming, Hear(Ask("condenser_coil"), "wait", Clear).State.Phase);
    }

    [Theory]
    [InlineData("discharge_pressure", "one seventeen psi", true)]
    [InlineData("discharge_pressure", "one hundred", false)]
    [InlineData("box_temperature", "minus ten degrees", true)]
    [InlineData("condenser_coil", "dirty", true)]
    [InlineData("condenser_coil", "skip", true)]
    public void Words_are_whole_where_nothing_that_follows_could_change_them(string fact, string words, bool isWhole) =>
        Assert.Equal(isWhole, Dialogue.IsWhole(Ask(fact), words));

    [Fact]
    public void Wait_keeps_what_is_pending_and_stores_nothing_until_continue()
    {
        var readBack = Hear(Ask("discharge_pressure"), "two twenty six");
        var waiting = Hear(readBack.State, "wait");
        var heard = Hear(waiting.State, "correct", Clear);
        var back = Hear(heard.State, "continue", Clear);

        Assert.Null(heard.Send);
        Assert.Equal(readBack.Say, back.Say);
        Assert.Equal("226 psig", Hear(back.State, "correct", Clear).Send);
    }

    [Fact]
    public void While_it_speaks_only_the_controls_are_heard()
    {
        var readBack = Hear(Ask("discharge_pressure"), "two twenty six");

        Assert.Equal(new(readBack.State, ""), Dialogue.HearWhileSpeaking(readBack.State, Words("correct", Clear)));
        Assert.Equal(readBack.Say, Dialogue.HearWhileSpeaking(readBack.State, Words("say again", Clear)).Say);
        Assert.True(Dialogue.HearWhileSpeaking(readBack.State, Words("slower", Clear)).State.Style.WordsPerMinute < readBack.State.Style.WordsPerMinute);
        Assert.Equal("emergency", Dialogue.HearWhileSpeaking(readBack.State, Words("emergency", Clear)).Send);
    }

    [Fact]
    public void An_emergency_is_sent_at_once_whatever_was_pending()
    {
        var step = Hear(Hear(Ask("discharge_pressure"), "two twenty six").State, "emergency");

        Assert.Equal("emergency", step.Send);
        Assert.Null(step.State.Pending);
    }

    [Fact]
    public void When_nobody_makes_sense_it_waits_for_its_name()
    {
        var state = Ask("condenser_coil");
        for (var i = 0; i < 5; i++)
        {
            state = Hear(state, null).State;
        }

        Assert.Equal(VoicePhase.WakeWord, state.Phase);
        Assert.Equal("", Hear(state, null).Say);
        Assert.Contains("coil face", Hear(state, "coldwalk", Clear).Say, StringComparison.Ordinal);
    }

    [Fact]
    public void What_somebody_else_answered_meanwhile_is_not_stored_for_another_question()
    {
        var readBack = Hear(Ask("discharge_pressure"), "two twenty six");

        var moved = Dialogue.MovedOn(readBack.State, Question("suction_pressure"));

        Assert.StartsWith("Answered meanwhile; not taken.", moved.Say, StringComparison.Ordinal);
        Assert.Null(moved.State.Pending);
    }

    [Fact]
    public void Whatever_number_a_question_takes_is_sent_so_that_just_that_is_understood()
    {
        foreach (var fact in FactCatalogue.All.Where(f => f.IsQuantity))
        {
            foreach (var units in Enum.GetValues<UnitSystem>())
            {
                foreach (var value in new[] { "one", "twenty two", "seventy five", "two point five" })
                {
                    var step = Hear(Dialogue.Start(Question(fact.Name), units).State, value, Clear);
                    if (step.State.Pending is { Reading: { } reading } pending)
                    {
                        Assert.Equal(reading, Assert.Single(hearing.Parts.Understander.Understand(pending.Text, new UnderstandingContext(fact, units)).Readings));
                    }
                    else
                    {
                        Assert.NotEqual("", step.Say);
                    }
                }
            }
        }
    }

    private VoiceState Ask(string fact) => Dialogue.Start(Question(fact), UnitSystem.Us).State;

    private static Reply Question(string fact) => new(
        Phrase.Empty, [], [], fact == "condenser_coil" ? new("Look at the coil face", "The coil face?") : new("What is it?", "What is it?"), [.. FactCatalogue.Find(fact)!.Choices], fact, [], null, []);

    private VoiceStep Hear(VoiceState state, string? words, double? margin = null) => Dialogue.Hear(state, words is null ? new(HeardKind.NotForUs, null, -40) : Words(words, margin));

    private static Heard Words(string words, double? margin) => new(HeardKind.Words, words, 0, margin);
}
