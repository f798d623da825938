using Assistant.Channels.Shaping;

namespace Assistant.Channels.Tests.Shaping;

public class TerminalShapeTests
{
    [Fact]
    public void The_choices_stand_behind_the_question() =>
        Assert.Equal("9 °C taken.\nIs the coil face clean or dirty? [clean / dirty]", TerminalShape.Of(SampleReplies.Question).Text);

    [Fact]
    public void A_caution_has_its_own_line() =>
        Assert.Contains("CAUTION: lock out before hands go near the fan.", TerminalShape.Of(SampleReplies.VerdictWithCaution).Text.Split('\n'));
}
