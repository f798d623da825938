using System.Buffers.Binary;
using System.Runtime.InteropServices;

namespace Assistant.Voice.Sound;

/// <summary>WAV files with 16-bit PCM: what recorders, browsers and speech programs write. Several channels become their mean.</summary>
public static class WavFile
{
    private const int PcmFormat = 1;
    private const int ExtensibleFormat = 0xFFFE;
    private const int HeaderBytes = 44;

    /// <exception cref="InvalidDataException">With one line that says what is wrong and what would be right.</exception>
    public static PcmAudio Read(string path) => Parse(File.ReadAllBytes(path), path);

    /// <param name="name">What an error calls the sound.</param>
    /// <exception cref="InvalidDataException">With one line that says what is wrong and what would be right.</exception>
    public static PcmAudio Parse(ReadOnlySpan<byte> bytes, string name)
    {
        if (bytes.Length < 12 || !bytes[..4].SequenceEqual("RIFF"u8) || !bytes[8..12].SequenceEqual("WAVE"u8))
        {
            throw new InvalidDataException($"{name}: no WAV file; a WAV file with 16-bit PCM is needed");
        }

        var (channels, rate) = (0, 0);
        for (var at = 12; at + 8 <= bytes.Length;)
        {
            var size = (int)Math.Min(BinaryPrimitives.ReadUInt32LittleEndian(bytes[(at + 4)..]), (uint)(bytes.Length - at - 8));
            var id = bytes.Slice(at, 4);
            var body = bytes.Slice(at + 8, size);
            if (id.SequenceEqual("fmt "u8) && size >= 16)
            {
                (channels, rate) = Format(body, name);
            }
            else if (id.SequenceEqual("data"u8) && channels > 0)
            {
                return new(Mono(body, channels), rate);
            }

            // Chunks are padded to an even length.
            at += 8 + size + (size & 1);
        }

        throw new InvalidDataException($"{name}: the WAV file has no sound in it; a format and a data part are needed");
    }

    public static void Write(string path, PcmAudio sound) => File.WriteAllBytes(path, ToBytes(sound));

    /// <summary>The whole file.</summary>
    public static byte[] ToBytes(PcmAudio sound)
    {
        var bytes = new byte[HeaderBytes + (sound.Samples.Length * 2)];
        var header = bytes.AsSpan();
        "RIFF"u8.CopyTo(header);
        BinaryPrimitives.WriteInt32LittleEndian(header[4..], bytes.Length - 8);
        "WAVEfmt "u8.CopyTo(header[8..]);
        BinaryPrimitives.WriteInt32LittleEndian(header[16..], 16);
        BinaryPrimitives.WriteInt16LittleEndian(header[20..], PcmFormat);
        BinaryPrimitives.WriteInt16LittleEndian(header[22..], 1);
        BinaryPrimitives.WriteInt32LittleEndian(header[24..], sound.Rate);
        BinaryPrimitives.WriteInt32LittleEndian(header[28..], sound.Rate * 2);
        BinaryPrimitives.WriteInt16LittleEndian(header[32..], 2);
        BinaryPrimitives.WriteInt16LittleEndian(header[34..], 16);
        "data"u8.CopyTo(header[36..]);
        BinaryPrimitives.WriteInt32LittleEndian(header[40..], sound.Samples.Length * 2);
        MemoryMarshal.AsBytes(sound.Samples.AsSpan()).CopyTo(header[HeaderBytes..]);
        return bytes;
    }

    private static (int Channels, int Rate) Format(ReadOnlySpan<byte> body, string name)
    {
        int kind = BinaryPrimitives.ReadUInt16LittleEndian(body);
        int channels = BinaryPrimitives.ReadUInt16LittleEndian(body[2..]);
        var rate = BinaryPrimitives.ReadInt32LittleEndian(body[4..]);
        int bits = BinaryPrimitives.ReadUInt16LittleEndian(body[14..]);
        return kind is PcmFormat or ExtensibleFormat && bits == 16 && channels is > 0 and <= 8 && rate is >= 8000 and <= 192_000
            ? (channels, rate)
            : throw new InvalidDataException($"{name}: format {kind}, {bits} bits, {channels} channels, {rate} Hz; 16-bit PCM from 8 to 192 kHz is needed");
    }

    private static short[] Mono(ReadOnlySpan<byte> body, int channels)
    {
        var all = MemoryMarshal.Cast<byte, short>(body[..(body.Length / (2 * channels) * 2 * channels)]);
        var samples = new short[all.Length / channels];
        for (var i = 0; i < samples.Length; i++)
        {
            var sum = 0;
            foreach (var sample in all.Slice(i * channels, channels))
            {
                sum += sample;
            }

            samples[i] = (short)(sum / channels);
        }

        return samples;
    }
}
