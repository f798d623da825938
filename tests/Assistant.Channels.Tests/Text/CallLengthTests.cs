using Assistant.Channels.Text;
using Xunit.Abstractions;

namespace Assistant.Channels.Tests.Text;

public class CallLengthTests(ITestOutputHelper output)
{
    [Fact]
    public async Task The_whole_call_takes_eight_texts_of_one_who_sends_everything_seen_at_a_place_at_once()
    {
        await using var scene = await TextScene.OpenAsync();
        var segments = 0;
        foreach (var text in WarmBoxCall.InOneTextAPlace)
        {
            var reply = await scene.TextAsync("+15550101", text);
            segments += Gsm7.Segments(reply);
            output.WriteLine($"> {text}\n< {reply}   [{Gsm7.Segments(reply)}]");
        }

        Assert.NotNull((await scene.StateAsync("+15550101")).Outcome);
        Assert.InRange(WarmBoxCall.InOneTextAPlace.Length, 1, 8);
        Assert.InRange(segments, WarmBoxCall.InOneTextAPlace.Length, 2 * WarmBoxCall.InOneTextAPlace.Length);
        Assert.All(WarmBoxCall.InOneTextAPlace, text => Assert.Equal(1, Gsm7.Segments(text)));
    }
}
