using Assistant.Voice.Sound;

namespace Assistant.Voice.Devices;

/// <summary>The loudspeaker by ALSA's aplay, as a child process; cut off in the middle when cancelled.</summary>
/// <param name="device">An ALSA device; null for the usual one.</param>
public sealed class Loudspeaker(string? device = null, string program = "aplay")
{
    /// <returns>False where it was cut off.</returns>
    /// <exception cref="VoicePartMissingException">No player or no loudspeaker.</exception>
    public async Task<bool> PlayAsync(PcmAudio sound, CancellationToken cancellation)
    {
        using var process = Sounding.Start(program, ["-q", "-t", "wav", .. Sounding.Device(device)], "Speaking");
        var errors = process.StandardError.ReadToEndAsync(CancellationToken.None);
        try
        {
            await process.StandardInput.BaseStream.WriteAsync(WavFile.ToBytes(sound), cancellation);
            process.StandardInput.Close();
            await process.WaitForExitAsync(cancellation);
        }
        catch (OperationCanceledException)
        {
            return false;
        }
        catch (IOException)
        {
            // It has ended before it took all: what it says is below.
            await process.WaitForExitAsync(CancellationToken.None);
        }
        finally
        {
            if (!process.HasExited)
            {
                process.Kill();
            }
        }

        return process.ExitCode == 0 ? true
            : throw new VoicePartMissingException($"Speaking is off: the loudspeaker plays nothing ({Sounding.FirstLine(await errors)}); name another with --loudspeaker, as aplay -L lists them");
    }
}
