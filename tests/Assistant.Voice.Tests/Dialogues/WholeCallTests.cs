using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Sound;
using Assistant.Voice.Speaking;
using Xunit.Abstractions;

namespace Assistant.Voice.Tests.Dialogues;

/// <summary>The warm-box call by voice, sound to sound: a synthetic technician answers what the assistant's own voice asks.</summary>
[Collection(HearingCollection.Name)]
public sealed class WholeCallTests(HearingParts hearing, ITestOutputHelper output)
{
    // The same sentences are spoken in every call.
    private static readonly RememberingVoice Assistant = new(new EspeakVoice());

    /// <summary>No limit on the extra turns is a bar: they are the most measured, and a few more.</summary>
    [Theory]
    [InlineData("flite", "slt", double.PositiveInfinity, 4)]
    [InlineData("flite", "slt", 20, 4)]
    [InlineData("flite", "slt", 10, 16)]
    [InlineData("flite", "awb", double.PositiveInfinity, 4)]
    [InlineData("flite", "awb", 20, 4)]
    [InlineData("flite", "awb", 10, 16)]
    [InlineData("festival", "kal_diphone", double.PositiveInfinity, 4)]
    [InlineData("festival", "kal_diphone", 20, 4)]
    [InlineData("festival", "kal_diphone", 10, 16)]
    [InlineData("festival", "cmu_us_slt_arctic_hts", double.PositiveInfinity, 8)]
    [InlineData("festival", "cmu_us_slt_arctic_hts", 20, 18)]
    [InlineData("festival", "cmu_us_slt_arctic_hts", 10, 18)]
    public async Task A_call_by_voice_ends_with_the_facts_of_the_typed_one(string program, string voice, double decibels, int mostExtra)
    {
        var typed = WarmBoxCall.Visit(hearing.Parts.Engine);
        await WarmBoxCall.TypeAsync(typed);
        var spoken = WarmBoxCall.Visit(hearing.Parts.Engine);

        var call = await WarmBoxCall.SpeakAsync(hearing.Parts, spoken, new(program, voice), decibels, Assistant);

        output.WriteLine($"{program} {voice} at {decibels} dB: {call.Utterances} utterances, {call.Extra} of them extra; spoken to for {call.Spoken.TotalSeconds:0} s, longest {call.Longest.TotalSeconds:0.0} s");
        output.WriteLine(string.Join('\n', call.Lines));
        Assert.Equal(typed.Facts, spoken.Facts);
        Assert.NotNull(spoken.State.Outcome);
        Assert.InRange(call.Longest.TotalSeconds, 5, 12.9);
        Assert.InRange(call.Extra, 0, mostExtra);
    }

    private sealed class RememberingVoice(ISpeechVoice voice) : ISpeechVoice
    {
        private readonly Dictionary<(string, SpeakingStyle), PcmAudio> said = [];

        public async Task<PcmAudio> SayAsync(string text, SpeakingStyle style, CancellationToken cancellation = default) =>
            said.TryGetValue((text, style), out var sound) ? sound : said[(text, style)] = await voice.SayAsync(text, style, cancellation);
    }
}
