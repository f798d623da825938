using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Sound;

namespace Assistant.Voice.Tests.Sound;

public sealed class ComfortNoiseTests
{
    private const int Second = PcmAudio.HearingRate;

    private static readonly PcmAudio Speech = new SyntheticVoice("flite", "awb").Say("forty one degrees");

    [Fact]
    public void Digital_silence_around_speech_becomes_a_rush_30_dB_below_it()
    {
        var silent = FanNoise.Behind(Speech, double.PositiveInfinity, 1, lead: 1);

        var under = ComfortNoise.Under(silent);

        var below = 20 * Math.Log10(under.Slice(0, Second).Loudness() / Speech.Loudness());
        Assert.InRange(below, -34, -26);
        Assert.Equal(under.Samples, ComfortNoise.Under(silent).Samples);
    }

    [Fact]
    public void Where_a_fan_runs_nothing_is_added()
    {
        var near = FanNoise.Behind(Speech, 20, 41, lead: 1);

        Assert.Same(near, ComfortNoise.Under(near));
    }

    [Fact]
    public void Where_there_is_no_sound_at_all_there_stays_none()
    {
        var none = new PcmAudio(new short[Second], Second);

        Assert.Same(none, ComfortNoise.Under(none));
    }
}
