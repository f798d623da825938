using Assistant.Dialogue.Tests.Turns;
using Assistant.Dialogue.Walks;

namespace Assistant.Dialogue.Tests.Walks;

public sealed class WalkDrawingTests
{
    [Fact]
    public void The_drawing_beside_the_walk_is_the_machine_that_runs()
    {
        var drawn = new WalkMachine(Conversation.Walk).Draw();

        Assert.Equal(RepositoryFiles.Read("dialogs/walks/warm-box.mmd").Text, drawn);
    }
}
