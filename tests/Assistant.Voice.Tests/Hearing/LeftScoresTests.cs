using System.Diagnostics;
using Assistant.Voice.Hearing;

namespace Assistant.Voice.Tests.Hearing;

/// <summary>What a program that was killed leaves in memory, and what one that runs beside it keeps.</summary>
[Collection(HearingCollection.Name)]
public sealed class LeftScoresTests(HearingParts hearing)
{
    private const string Memory = "/dev/shm";

    [Fact]
    public async Task The_folder_of_a_killed_program_goes_with_the_next_start_and_a_running_programs_stays()
    {
        string killed = Made(), running = Made();
        using var first = await HoldAsync(killed);
        using var second = await HoldAsync(running);
        try
        {
            Start();
            Assert.True(Directory.Exists(killed), "it still ran");

            first.Kill();
            await first.WaitForExitAsync();
            Start();

            Assert.False(Directory.Exists(killed), "it was killed");
            Assert.True(Directory.Exists(running), "it runs on");
        }
        finally
        {
            second.Kill();
            await second.WaitForExitAsync();
            Directory.Delete(running, recursive: true);
        }
    }

    [Fact]
    public void A_folder_that_is_just_being_made_stays()
    {
        var making = Made();

        Start();

        Assert.True(Directory.Exists(making));
        Directory.Delete(making);
    }

    private static string Made() => Directory.CreateDirectory(Path.Combine(Memory, "coldwalk-hearing-" + Path.GetRandomFileName())).FullName;

    private void Start() => SpeechRecogniser.Open(AcousticModel.Installed, hearing.Parts.Sounds, ["one"]).Dispose();

    // Another program that holds its lock as ours does, until it is killed.
    private static async Task<Process> HoldAsync(string folder)
    {
        var start = new ProcessStartInfo("flock", ["--no-fork", Path.Combine(folder, "lock"), "sh", "-c", "echo held; exec sleep 60"]) { RedirectStandardOutput = true };
        var program = Process.Start(start) ?? throw new InvalidOperationException("flock does not start");
        Assert.Equal("held", await program.StandardOutput.ReadLineAsync());
        return program;
    }
}
