using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using Assistant.Voice.Sound;

namespace Assistant.Voice.Speaking;

/// <summary>espeak-ng (GPL) as a program of its own, never linked: SSML in, a WAV out.</summary>
/// <param name="program">The program's name or path.</param>
/// <param name="voice">One of its voices.</param>
public sealed class EspeakVoice(string program = "espeak-ng", string voice = "en-us") : ISpeechVoice
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(20);

    public async Task<PcmAudio> SayAsync(string spoken, SpeakingStyle style, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(style);
        string[] arguments =
        [
            "-m", "-v", voice, "-s", style.WordsPerMinute.ToString(CultureInfo.InvariantCulture),
            "-a", style.Loudness.ToString(CultureInfo.InvariantCulture), "--stdin", "--stdout",
        ];
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(Longest);
        using var process = Start(arguments);
        try
        {
            var sound = new MemoryStream();
            var reading = process.StandardOutput.BaseStream.CopyToAsync(sound, limit.Token);
            var errors = process.StandardError.ReadToEndAsync(limit.Token);
            await process.StandardInput.WriteAsync(Ssml.Of(spoken).AsMemory(), limit.Token);
            process.StandardInput.Close();
            await reading;
            await process.WaitForExitAsync(limit.Token);
            return sound.Length > 0 ? WavFile.Parse(sound.ToArray(), program) : throw Off($"{program} gave no sound ({(await errors).Trim()})");
        }
        catch (IOException failure)
        {
            throw Off($"{program} stopped early ({failure.Message})");
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            throw Off($"{program} took longer than {Longest.TotalSeconds:0} s");
        }
        finally
        {
            if (!process.HasExited)
            {
                process.Kill();
            }
        }
    }

    private Process Start(string[] arguments)
    {
        try
        {
            return Process.Start(new ProcessStartInfo(program, arguments)
            {
                RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false,
            }) ?? throw Off($"{program} does not start");
        }
        catch (Win32Exception)
        {
            throw Off($"{program} is missing; install it with: apt-get install espeak-ng");
        }
    }

    private static VoicePartMissingException Off(string why) => new($"Speaking is off: {why}");
}
