using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Speaking;
using Xunit.Abstractions;

namespace Assistant.Voice.Tests.Dialogues;

/// <summary>A leak search and the choice of its repair by voice, sound to sound: nearly every answer is one of several words offered.</summary>
[Collection(HearingCollection.Name)]
public sealed class LeakCallTests(HearingParts hearing, ITestOutputHelper output)
{
    /// <summary>No limit on the extra turns is a bar: they are the measured, and a few more.</summary>
    [Theory]
    [InlineData("flite", "slt", double.PositiveInfinity, 6)]
    [InlineData("flite", "awb", 10, 16)]
    public async Task A_leak_search_by_voice_ends_where_the_typed_one_does_and_nothing_chosen_was_not_confirmed(string program, string voice, double decibels, int mostExtra)
    {
        var typed = await LeakCall.VisitAsync(hearing.Parts.Engine);
        await LeakCall.TypeAsync(typed);
        var spoken = await LeakCall.VisitAsync(hearing.Parts.Engine);

        var call = await LeakCall.SpeakAsync(hearing.Parts, spoken, new(program, voice), decibels, new EspeakVoice());

        output.WriteLine($"{program} {voice} at {decibels} dB: {call.Utterances} utterances, {call.Extra} of them extra; spoken to for {call.Spoken.TotalSeconds:0} s, longest {call.Longest.TotalSeconds:0.0} s");
        output.WriteLine(string.Join('\n', call.Lines));
        Assert.Equal(typed.Facts, spoken.Facts);
        Assert.Equal(typed.State.Leaks.Select(l => l.Place), spoken.State.Leaks.Select(l => l.Place));
        Assert.Equal((await typed.NowAsync(default)).Walk, (await spoken.NowAsync(default)).Walk);
        Assert.Equal(["can-not-be-shut-off", "good-access", "no-parts", "flare", "no-more", "bubbles"], new[] { "repair-shut-off", "repair-access", "repair-parts", "repair-part", "more-leaks", "leak-soap" }.Select(spoken.State.Chosen));
        Assert.InRange(call.Extra, 0, mostExtra);
    }
}
