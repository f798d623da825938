using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Hearing;

namespace Assistant.Voice.Tests.Dialogues;

/// <summary>More cautions than one listens to in one piece: they come in parts, and whatever comes between, none is lost and the question waits for them.</summary>
[Collection(HearingCollection.Name)]
public sealed class ReplyTellingTests(HearingParts hearing)
{
    private static readonly string[] Cautions =
    [
        "Never touch the red pipe while it is hot.", "Never touch the blue pipe while it is cold.", "Keep off the green pipe in any weather.",
        "Keep off the grey pipe when you are alone.", "Mind the brown pipe above the door.",
    ];

    private VoiceDialogue Dialogue => hearing.Parts.Dialogue;

    [Fact]
    public void The_question_is_held_back_until_every_caution_was_heard()
    {
        var first = Dialogue.Start(Asking(Cautions), UnitSystem.Us);
        var second = Hear(first.State, "continue");

        Assert.StartsWith(Cautions[0], first.Say, StringComparison.Ordinal);
        Assert.EndsWith("say continue.", first.Say, StringComparison.Ordinal);
        Assert.Equal(VoicePhase.GoingOn, first.State.Phase);
        Assert.All(Cautions, c => Assert.Contains(c, $"{first.Say} {second.Say}", StringComparison.Ordinal));
        Assert.EndsWith("What is the head?", second.Say, StringComparison.Ordinal);
        Assert.Equal(VoicePhase.Answer, second.State.Phase);
    }

    [Fact]
    public void A_yes_goes_on_too_and_neither_a_number_nor_skip_answers_what_was_not_asked()
    {
        var first = Dialogue.Start(Asking(Cautions), UnitSystem.Us).State;

        Assert.EndsWith("What is the head?", Hear(first, "yes").Say, StringComparison.Ordinal);
        foreach (var words in new[] { "skip", "two twenty six" })
        {
            var step = Hear(first, words);
            Assert.Equal((null, VoicePhase.GoingOn), (step.Send, step.State.Phase));
            Assert.Equal(first.Unheard, step.State.Unheard);
        }
    }

    [Fact]
    public void What_is_heard_again_or_waited_over_is_the_part_said_last()
    {
        var first = Dialogue.Start(Asking(Cautions), UnitSystem.Us);

        Assert.Equal(first.Say, Hear(first.State, "say again").Say);
        Assert.Equal(first.Say, Hear(Hear(first.State, "wait").State, "continue").Say);
        Assert.Equal(first.State.Unheard, Hear(Hear(first.State, "wait").State, "continue").State.Unheard);
    }

    [Fact]
    public void After_a_sleep_the_cautions_not_yet_heard_come_before_the_question()
    {
        var first = Dialogue.Start(Asking(Cautions), UnitSystem.Us).State;

        var woken = Hear(VoiceDialogue.Sleep(first), "coldwalk");

        Assert.All(first.Unheard, c => Assert.Contains(c, woken.Say, StringComparison.Ordinal));
        Assert.EndsWith("What is the head?", woken.Say, StringComparison.Ordinal);
    }

    [Fact]
    public void What_others_answered_meanwhile_takes_no_caution_away()
    {
        var first = Dialogue.Start(Asking(Cautions), UnitSystem.Us).State;

        var moved = Dialogue.Answered(first, Asking([]));

        Assert.All(first.Unheard, c => Assert.Contains(c, moved.Say, StringComparison.Ordinal));
        Assert.Empty(moved.State.Unheard);
    }

    [Fact]
    public void An_emergency_is_told_at_once_and_the_cautions_wait_for_the_next_question()
    {
        var first = Dialogue.Start(Asking(Cautions), UnitSystem.Us).State;
        var sent = Hear(first, "emergency");
        var stop = Dialogue.Answered(sent.State, Asking([]) with { Say = new("STOP.", "STOP."), Ask = null, AskedFact = null });
        var resumed = Dialogue.Answered(stop.State, Asking([]));

        Assert.Equal("emergency", sent.Send);
        Assert.Equal(("STOP.", VoicePhase.Answer), (stop.Say, stop.State.Phase));
        Assert.All(first.Unheard, c => Assert.Contains(c, resumed.Say, StringComparison.Ordinal));
    }

    [Fact]
    public void Beginning_again_says_what_was_not_heard_yet()
    {
        var first = Dialogue.Start(Asking(Cautions), UnitSystem.Us).State;

        var again = Dialogue.Start(Asking([]), UnitSystem.Us, first);

        Assert.All(first.Unheard, c => Assert.Contains(c, again.Say, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Where_another_led_the_visit_on_who_listens_hears_the_cautions_of_the_new_question_first()
    {
        var visit = new LedByAnother(Asking([]), Asking([]) with { AskedFact = "suction_pressure" }, [.. Asking(Cautions.Take(1)).Cautions]);
        var session = new VoiceSession(hearing.Parts.Recogniser, hearing.Parts.Dialogue, visit);
        await session.StartAsync();
        visit.IsOn = true;

        var turn = await session.HearAsync(new(new short[1600], 16000));

        Assert.Equal($"{Cautions[0]} What is the head?", turn.Say);
    }

    [Fact]
    public void What_is_said_before_a_question_moved_on_counts_with_the_rest()
    {
        var pending = Dialogue.Start(Asking([]), UnitSystem.Us).State;

        var moved = Dialogue.MovedOn(pending, Asking(Cautions));

        Assert.StartsWith("Answered meanwhile; not taken. " + Cautions[0], moved.Say, StringComparison.Ordinal);
        Assert.InRange(moved.State.Style.Estimate(moved.Say).TotalSeconds, 5, 12);
        Assert.Equal(VoicePhase.GoingOn, moved.State.Phase);
    }

    [Fact]
    public void Where_nobody_says_continue_it_asks_for_it_and_at_last_waits_for_its_name()
    {
        var step = Dialogue.Start(Asking(Cautions), UnitSystem.Us);
        var said = new List<string>();
        for (var i = 0; i < 5; i++)
        {
            step = Dialogue.Hear(step.State, new(HeardKind.NotForUs, null, -40));
            said.Add(step.Say);
        }

        Assert.All(said.Take(4), s => Assert.Equal("More first: say continue.", s));
        Assert.Equal(VoicePhase.WakeWord, step.State.Phase);
    }

    private static Reply Asking(IEnumerable<string> cautions) => new(
        Phrase.Empty, [], [.. cautions.Select((c, i) => new SpokenCaution($"c{i}", new(c, c)))], new("What is the head?", "What is the head?"), [], "discharge_pressure", [], null, []);

    private VoiceStep Hear(VoiceState state, string words) => Dialogue.Hear(state, new(HeardKind.Words, words, 0, 20));

    private sealed class LedByAnother(Reply first, Reply then, ImmutableArray<SpokenCaution> cautions) : IVoiceVisit
    {
        public bool IsOn { get; set; }

        public UnitSystem Units => UnitSystem.Us;

        public Task<Reply> NowAsync(CancellationToken cancellation) => Task.FromResult(IsOn ? then : first);

        public Task<Reply> WithCautionsAsync(Reply now, CancellationToken cancellation) => Task.FromResult(IsOn ? now with { Cautions = cautions } : now);

        public Task<Reply> SayAsync(string text, CancellationToken cancellation) => NowAsync(cancellation);
    }
}
