using Assistant.Voice.Speaking;

namespace Assistant.Voice.Tests.Speaking;

public sealed class EspeakVoiceTests
{
    private static readonly EspeakVoice Voice = new();

    [Fact]
    public async Task Digits_spelled_take_longer_than_the_number_said_as_one()
    {
        var spelled = await Voice.SayAsync("1 7 7 P S I", new());
        var said = await Voice.SayAsync("17 P S I", new());

        Assert.True(spelled.Duration > said.Duration * 1.1, $"{spelled.Duration} against {said.Duration}");
    }

    [Fact]
    public async Task Slower_takes_longer_and_louder_is_louder()
    {
        const string Text = "Head pressure 24 bar. Is the coil face clean, or dirty?";
        var usual = await Voice.SayAsync(Text, new());
        var slower = await Voice.SayAsync(Text, new SpeakingStyle().Slower.Slower);
        var louder = await Voice.SayAsync(Text, new SpeakingStyle().Louder.Louder);

        Assert.True(slower.Duration > usual.Duration * 1.15, $"{slower.Duration} against {usual.Duration}");
        Assert.True(louder.Loudness() > usual.Loudness() * 1.1, $"{louder.Loudness()} against {usual.Loudness()}");
    }

    [Fact]
    public async Task The_estimate_of_a_texts_length_is_within_a_third()
    {
        const string Text = "Verdict: the condenser can not get rid of its heat. Lock out, tag, prove dead. 26 kelvin over the air, plate 12. Lock out, clean the coil, check the fans. Done, or later.";
        var style = new SpeakingStyle();

        var sound = await Voice.SayAsync(Text, style);

        Assert.InRange(style.Estimate(Text).TotalSeconds / sound.Duration.TotalSeconds, 0.75, 1.34);
    }

    [Fact]
    public async Task Without_the_program_one_line_says_what_to_install()
    {
        var missing = await Assert.ThrowsAsync<VoicePartMissingException>(() => new EspeakVoice("no-such-voice").SayAsync("hello", new()));

        Assert.Equal("Speaking is off: no-such-voice is missing; install it with: apt-get install espeak-ng", missing.Message);
    }
}
