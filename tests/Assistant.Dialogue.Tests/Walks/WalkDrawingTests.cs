using Assistant.Dialogue.Tests.Turns;

namespace Assistant.Dialogue.Tests.Walks;

/// <summary>COLDWALK_DRAW=1 draws them anew.</summary>
public sealed class WalkDrawingTests
{
    public static TheoryData<string> Walks => [.. Conversation.Walks.All.Select(w => w.Name)];

    [Theory]
    [MemberData(nameof(Walks))]
    public void The_drawing_beside_a_walk_is_the_machine_that_runs(string walk)
    {
        var drawn = Conversation.Walks.Machine(walk).Draw();
        var path = Path.Combine(RepositoryFiles.Root, $"dialogs/walks/{walk}.mmd");
        if (Environment.GetEnvironmentVariable("COLDWALK_DRAW") == "1")
        {
            File.WriteAllText(path, drawn);
        }

        Assert.Equal(File.ReadAllText(path), drawn);
    }
}
