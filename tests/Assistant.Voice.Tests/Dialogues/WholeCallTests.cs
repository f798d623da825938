using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Speaking;
using Xunit.Abstractions;

namespace Assistant.Voice.Tests.Dialogues;

/// <summary>The warm-box call by voice, sound to sound: a synthetic technician answers what the assistant's own voice asks.</summary>
[Collection(HearingCollection.Name)]
public sealed class WholeCallTests(HearingParts hearing, ITestOutputHelper output)
{
    [Theory]
    [InlineData("flite", "slt", double.PositiveInfinity)]
    [InlineData("flite", "awb", 20)]
    public async Task A_call_by_voice_ends_with_the_facts_of_the_typed_one(string program, string voice, double decibels)
    {
        var typed = WarmBoxCall.Visit(hearing.Parts.Engine);
        await WarmBoxCall.TypeAsync(typed);
        var spoken = WarmBoxCall.Visit(hearing.Parts.Engine);

        var call = await WarmBoxCall.SpeakAsync(hearing.Parts, spoken, new(program, voice), decibels, new EspeakVoice());

        output.WriteLine($"{program} {voice} at {decibels} dB: {call.Utterances} utterances, {call.Extra} of them extra; spoken to for {call.Spoken.TotalSeconds:0} s, longest {call.Longest.TotalSeconds:0.0} s");
        output.WriteLine(string.Join('\n', call.Lines));
        Assert.Equal(typed.Facts, spoken.Facts);
        Assert.NotNull(spoken.State.Outcome);
        Assert.InRange(call.Longest.TotalSeconds, 5, 12.9);
        Assert.InRange(call.Extra, 0, double.IsPositiveInfinity(decibels) ? 8 : 20);
    }
}
