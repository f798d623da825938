using Assistant.Voice.Hearing;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Sound;

namespace Assistant.Voice.Tests.Hearing;

public sealed class EndpointerTests
{
    private static readonly SyntheticVoice Voice = new("flite", "awb");

    [Theory]
    [InlineData(double.PositiveInfinity)]
    [InlineData(20)]
    [InlineData(10)]
    public void Two_answers_with_a_pause_between_are_two_utterances(double decibels)
    {
        var first = Voice.Say("one hundred seventeen pounds").Samples;
        var second = Voice.Say("forty one degrees").Samples;
        var both = new PcmAudio([.. first, .. new short[16_000], .. second], PcmAudio.HearingRate);

        var utterances = Cut(FanNoise.Behind(both, decibels, 11, lead: 1));

        Assert.Equal(2, utterances.Count);
        Assert.All(utterances, u => Assert.InRange(u.Duration.TotalSeconds, 0.8, 3.2));
    }

    [Fact]
    public void A_fan_alone_is_no_speech() => Assert.Empty(Cut(FanNoise.Alone(8, 1500, 12)));

    [Fact]
    public void A_knock_is_no_speech()
    {
        var sound = FanNoise.Alone(3, 100, 13);
        for (var i = 0; i < 500; i++)
        {
            sound.Samples[20_000 + i] = (short)(i % 2 == 0 ? 20_000 : -20_000);
        }

        Assert.Empty(Cut(sound));
    }

    [Fact]
    public void After_a_fan_has_come_on_speech_is_found_again_within_seconds()
    {
        var quiet = FanNoise.Alone(3, 50, 14).Samples;
        var answer = FanNoise.Behind(Voice.Say("forty one degrees"), 10, 15, lead: 5);

        var utterances = Cut(new([.. quiet, .. answer.Samples], PcmAudio.HearingRate));

        Assert.Single(utterances);
        Assert.InRange(utterances[0].Duration.TotalSeconds, 0.8, 2.5);
    }

    [Fact]
    public void A_fan_that_runs_when_the_microphone_opens_is_no_speech_and_the_answer_after_it_is()
    {
        var opening = FanNoise.Alone(0.2, 5, 16).Samples;
        var answer = FanNoise.Behind(Voice.Say("forty one degrees"), 20, 17, lead: 1.5);

        var utterances = Cut(new([.. opening, .. answer.Samples], PcmAudio.HearingRate));

        Assert.Single(utterances);
        Assert.InRange(utterances[0].Duration.TotalSeconds, 0.8, 2.5);
    }

    private static List<PcmAudio> Cut(PcmAudio sound)
    {
        var ear = new Endpointer(new());
        var utterances = sound.Samples.Chunk(1600).SelectMany(piece => ear.Take(piece)).ToList();
        return ear.Finish() is { } last ? [.. utterances, last] : utterances;
    }
}
