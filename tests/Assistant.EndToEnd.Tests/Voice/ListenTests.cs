using Assistant.EndToEnd.Tests.Fixtures;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Sound;

namespace Assistant.EndToEnd.Tests.Voice;

/// <summary>The call by voice in a terminal, from WAV files to WAV files.</summary>
public sealed class ListenTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("coldwalk-listen-");

    [Fact]
    public async Task Each_WAV_file_is_an_utterance_and_each_reply_becomes_one_and_what_was_confirmed_stays()
    {
        var said = Directory.CreateDirectory(Path.Combine(folder.FullName, "said")).FullName;
        var (replies, data) = (Path.Combine(folder.FullName, "replies"), Path.Combine(folder.FullName, "data"));
        foreach (var (words, index) in new[] { "okay", "nine point five degrees", "thats right" }.Select((w, i) => (w, i)))
        {
            WavFile.Write(Path.Combine(said, $"{index}.wav"), FanNoise.Behind(new SyntheticVoice("flite", "awb").Say(words), decibels: 20, seed: index));
        }

        var run = await AppRun.OfAsync(["listen", "--demo", "--data", data, "--wav", said, "--out", replies]);
        var after = await AppRun.OfAsync(["talk", "--data", data], "repeat\n");

        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.Contains("> 1.wav: nine point five degrees", run.Output, StringComparison.Ordinal);
        Assert.Contains("< 9 point 5 degrees Celsius. Correct, or wrong?", run.Output, StringComparison.Ordinal);
        var written = Directory.GetFiles(replies).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(["000.wav", "001.wav", "002.wav", "003.wav"], written.Select(Path.GetFileName));
        Assert.All(written, file => Assert.InRange(WavFile.Read(file).Duration.TotalSeconds, 0.5, 15));
        Assert.Contains("second thermometer", after.Output, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task A_folder_without_sound_is_named_in_one_line()
    {
        var run = await AppRun.OfAsync(["listen", "--demo", "--wav", folder.FullName]);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("no WAV file in it", run.Error, StringComparison.Ordinal);
    }

    public void Dispose() => folder.Delete(recursive: true);
}
