using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Sound;

namespace Assistant.Voice.Tests.Sound;

public sealed class SpeechSpanTests
{
    private static readonly PcmAudio Speech = new SyntheticVoice("flite", "awb").Say("forty one degrees");

    [Theory]
    [InlineData(double.PositiveInfinity)]
    [InlineData(20)]
    public void The_pauses_around_speech_go_and_a_fifth_of_a_second_stays(double decibels)
    {
        var pauses = SpeechSpan.Of(FanNoise.Behind(Speech, decibels, 31, lead: 1.5));

        Assert.InRange(pauses.Duration.TotalSeconds, Speech.Duration.TotalSeconds - 0.4, Speech.Duration.TotalSeconds + 0.41);
        Assert.InRange(Loudest(pauses), Loudest(Speech) * 0.9, Loudest(Speech) * 1.1);
    }

    [Fact]
    public void A_sound_in_which_nothing_stands_out_stays_whole()
    {
        var fan = FanNoise.Alone(2, 1000, 32);

        Assert.Same(fan, SpeechSpan.Of(fan));
    }

    private static double Loudest(PcmAudio sound) => sound.Samples.Max(s => Math.Abs((int)s));
}
