using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Assistant.Voice.Sound;

namespace Assistant.Voice.Devices;

/// <summary>The microphone by ALSA's arecord, as a child process: 16 kHz, one channel, 16 bits.</summary>
/// <param name="device">An ALSA device such as plughw:1,0; null for the usual one.</param>
public sealed class Microphone(string? device = null, string program = "arecord")
{
    private const int PieceSamples = PcmAudio.HearingRate / 50;

    /// <summary>The running sound in pieces of 20 ms, until cancelled.</summary>
    /// <exception cref="VoicePartMissingException">No recorder or no microphone.</exception>
    public async IAsyncEnumerable<short[]> ListenAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        using var process = Sounding.Start(program, ["-q", "-t", "raw", "-f", "S16_LE", "-r", "16000", "-c", "1", "--period-time=20000", .. Sounding.Device(device)], "Hearing");
        var errors = process.StandardError.ReadToEndAsync(CancellationToken.None);
        var bytes = new byte[PieceSamples * 2];
        try
        {
            while (await Filled(process.StandardOutput.BaseStream, bytes, cancellation))
            {
                yield return MemoryMarshal.Cast<byte, short>(bytes).ToArray();
            }
        }
        finally
        {
            if (!process.HasExited)
            {
                process.Kill();
            }
        }

        throw new VoicePartMissingException($"Hearing is off: the microphone gives no sound ({Sounding.FirstLine(await errors)}); name another with --microphone, as arecord -L lists them");
    }

    private static async Task<bool> Filled(Stream stream, byte[] bytes, CancellationToken cancellation)
    {
        try
        {
            await stream.ReadExactlyAsync(bytes, cancellation);
            return true;
        }
        catch (EndOfStreamException)
        {
            return false;
        }
    }
}
