using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Sound;

namespace Assistant.Voice.Tests.Sound;

public sealed class NoiseReductionTests
{
    private const int Second = PcmAudio.HearingRate;

    private static readonly PcmAudio Speech = new SyntheticVoice("flite", "awb").Say("two hundred and five pounds");

    [Theory]
    [InlineData(10)]
    [InlineData(20)]
    public void A_fan_falls_by_over_10_dB_and_the_speech_before_it_by_under_1_dB(double decibels)
    {
        var near = FanNoise.Behind(Speech, decibels, 21, lead: 1);

        var reduced = NoiseReduction.Of(near);

        Assert.InRange(Decibels(near.Slice(Second / 4, Second * 3 / 4), reduced.Slice(Second / 4, Second * 3 / 4)), -40, -10);
        Assert.InRange(Decibels(near.Slice(Second, near.Samples.Length - Second), reduced.Slice(Second, near.Samples.Length - Second)), -1, 0.1);
    }

    [Fact]
    public void Speech_in_quiet_is_left_as_it_is()
    {
        var quiet = FanNoise.Behind(Speech, double.PositiveInfinity, 1);

        Assert.InRange(Decibels(quiet, NoiseReduction.Of(quiet)), -0.1, 0.1);
    }

    [Fact]
    public void The_same_sound_gives_the_same_result_of_the_same_length()
    {
        var near = FanNoise.Behind(Speech, 10, 22);

        var (first, second) = (NoiseReduction.Of(near), NoiseReduction.Of(near));

        Assert.Equal(near.Samples.Length, first.Samples.Length);
        Assert.Equal(first.Samples, second.Samples);
    }

    [Fact]
    public void A_sound_too_short_to_hold_a_pause_is_left_as_it_is()
    {
        var click = FanNoise.Alone(0.05, 1000, 23);

        Assert.Same(click, NoiseReduction.Of(click));
    }

    private static double Decibels(PcmAudio before, PcmAudio after) => 20 * Math.Log10(after.Loudness() / before.Loudness());
}
