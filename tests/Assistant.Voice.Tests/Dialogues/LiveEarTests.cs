using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Hearing;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Sound;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Tests.Dialogues;

[Collection(HearingCollection.Name)]
public sealed class LiveEarTests(HearingParts hearing)
{
    private static readonly SyntheticVoice Voice = new("flite", "awb");

    [Fact]
    public async Task What_was_heard_ahead_is_what_the_utterance_is_heard_as_and_its_answer_lies_ready()
    {
        var (session, speech) = (await SessionAsync("discharge_pressure"), new Spoken());
        var (utterance, frames) = await UtteranceAsync(session, speech, "two twenty six pounds");

        var turn = await session.HearAsync(utterance!);
        var again = hearing.Parts.Recogniser.Hear(utterance!, hearing.Parts.Grammars.For(FactCatalogue.DischargePressure, [], UnitSystem.Us));

        Assert.StartsWith("two twenty six pound", turn.Heard.Words, StringComparison.Ordinal);
        Assert.Equal(again.Words, turn.Heard.Words);
        Assert.Equal([turn.Say], speech.Said);
        // A unit makes it whole, so the longer pause is not waited for.
        Assert.InRange(frames, 20, 35);
    }

    [Fact]
    public async Task A_number_that_may_go_on_is_waited_for_longer_and_a_pause_within_it_does_not_cut_it()
    {
        var (session, speech) = (await SessionAsync("discharge_pressure"), new Spoken());
        var said = new PcmAudio([.. Trimmed("one hundred"), .. new short[PcmAudio.HearingRate / 100 * 25], .. Trimmed("seventeen pounds")], PcmAudio.HearingRate);

        var (utterance, _) = await UtteranceAsync(session, speech, said);

        Assert.StartsWith("one hundred seventeen pound", (await session.HearAsync(utterance!)).Heard.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_heard_ahead_of_another_question_is_not_taken_for_its_answer()
    {
        var session = await SessionAsync("discharge_pressure");
        var sound = FanNoise.Behind(Voice.Say("two twenty six pounds"), 20, 1);
        session.HearAhead(sound, (_, _) => { });
        session.Sleep();

        var turn = await session.HearAsync(sound);

        Assert.Null(turn.Heard.Accepted);
        Assert.Equal("", turn.Say);
    }

    private async Task<VoiceSession> SessionAsync(string fact)
    {
        var session = new VoiceSession(hearing.Parts.Recogniser, hearing.Parts.Dialogue, new Asking(Phrases.Question(fact)));
        await session.StartAsync();
        return session;
    }

    private static short[] Trimmed(string words) => SpeechSpan.Of(Voice.Say(words)) is var sound ? sound.Slice(3000, sound.Samples.Length - 3000).Samples : [];

    private static Task<(PcmAudio? Utterance, int Frames)> UtteranceAsync(VoiceSession session, ISpeechVoice voice, string words) => UtteranceAsync(session, voice, Voice.Say(words));

    /// <summary>What the ear gives of the words near a fan, and how many frames of 10 ms after their last loud one it gives it.</summary>
    private static async Task<(PcmAudio? Utterance, int Frames)> UtteranceAsync(VoiceSession session, ISpeechVoice voice, PcmAudio said)
    {
        var ear = new LiveEar(session, new SpeechAhead(voice));
        var watched = new Endpointer(new() { EndFrames = 1000 });
        foreach (var piece in FanNoise.Behind(said, 20, 21, lead: 1).Samples.Chunk(160))
        {
            _ = watched.Take(piece).ToList();
            if (ear.Take(piece) is { } utterance)
            {
                return (utterance, watched.QuietFrames);
            }

            // The sound comes no faster than it is heard, whatever else the machine does.
            await session.Settled;
        }

        return (null, 0);
    }

    /// <summary>A voice that only notes what it was to say.</summary>
    private sealed class Spoken : ISpeechVoice
    {
        public List<string> Said { get; } = [];

        public Task<PcmAudio> SayAsync(string spoken, SpeakingStyle style, CancellationToken cancellation = default)
        {
            Said.Add(spoken);
            return Task.FromResult(new PcmAudio([], PcmAudio.HearingRate));
        }
    }

    private sealed class Asking(Assistant.Dialogue.Replies.Reply asked) : IVoiceVisit
    {
        public UnitSystem Units => UnitSystem.Us;

        public Task<Assistant.Dialogue.Replies.Reply> NowAsync(CancellationToken cancellation) => Task.FromResult(asked);

        public Task<Assistant.Dialogue.Replies.Reply> SayAsync(string text, CancellationToken cancellation) => Task.FromResult(asked);
    }
}
