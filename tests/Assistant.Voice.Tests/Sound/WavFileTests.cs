using Assistant.Voice.Sound;

namespace Assistant.Voice.Tests.Sound;

public sealed class WavFileTests
{
    [Fact]
    public void What_is_written_is_read_again()
    {
        var sound = new PcmAudio([0, 1, -1, short.MaxValue, short.MinValue], 16_000);

        var again = WavFile.Parse(WavFile.ToBytes(sound), "test");

        Assert.Equal(sound.Samples, again.Samples);
        Assert.Equal(16_000, again.Rate);
    }

    [Theory]
    [InlineData(new byte[] { 1, 2, 3 }, "no WAV file")]
    [InlineData(new byte[] { 0x52, 0x49, 0x46, 0x46, 0, 0, 0, 0, 0x57, 0x41, 0x56, 0x45 }, "no sound in it")]
    public void A_file_that_is_no_sound_gets_one_line_that_says_so(byte[] bytes, string said)
    {
        var wrong = Assert.Throws<InvalidDataException>(() => WavFile.Parse(bytes, "glove.wav"));

        Assert.StartsWith("glove.wav:", wrong.Message, StringComparison.Ordinal);
        Assert.Contains(said, wrong.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', wrong.Message);
    }

    [Fact]
    public void A_file_cut_short_gives_the_sound_there_is()
    {
        var bytes = WavFile.ToBytes(new([1, 2, 3, 4], 16_000));

        Assert.Equal([1, 2], WavFile.Parse(bytes.AsSpan(0, bytes.Length - 4), "cut").Samples);
    }

    [Fact]
    public void Two_channels_become_their_mean()
    {
        var bytes = WavFile.ToBytes(new([100, 300, -200, -400], 16_000));
        bytes[22] = 2;

        Assert.Equal([200, -300], WavFile.Parse(bytes, "stereo").Samples);
    }

    [Theory]
    [InlineData(8000)]
    [InlineData(22_050)]
    [InlineData(48_000)]
    public void A_tone_keeps_its_length_and_level_at_another_rate(int rate)
    {
        var tone = new PcmAudio([.. Enumerable.Range(0, rate).Select(i => (short)(10_000 * Math.Sin(Math.Tau * 440 * i / rate)))], rate);

        var heard = tone.At(PcmAudio.HearingRate);

        Assert.Equal(16_000, heard.Samples.Length);
        // A sine of amplitude 10000 has a root mean square of 7071.
        Assert.InRange(heard.Loudness(), 6800, 7200);
    }
}
