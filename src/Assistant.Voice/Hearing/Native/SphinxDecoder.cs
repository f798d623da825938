using System.Runtime.InteropServices;
using Assistant.Voice.Sound;
using Microsoft.Win32.SafeHandles;

namespace Assistant.Voice.Hearing.Native;

/// <summary>One decoder with its searches by name. Not for several threads at once; the caller keeps them apart.</summary>
internal sealed class SphinxDecoder : SafeHandleZeroOrMinusOneIsInvalid
{
    private SphinxDecoder(nint decoder)
        : base(ownsHandle: true) => SetHandle(decoder);

    /// <param name="options">Pairs of option and value, such as -hmm and the model's folder.</param>
    /// <exception cref="DllNotFoundException">The libraries are not installed.</exception>
    /// <exception cref="InvalidDataException">The model or the dictionary cannot be read.</exception>
    public static unsafe SphinxDecoder Open(params ReadOnlySpan<string> options)
    {
        var definitions = SphinxLibrary.Arguments();
        var values = stackalloc byte*[options.Length + 1];
        values[0] = (byte*)Marshal.StringToCoTaskMemUTF8("coldwalk");
        for (var i = 0; i < options.Length; i++)
        {
            values[i + 1] = (byte*)Marshal.StringToCoTaskMemUTF8(options[i]);
        }

        try
        {
            var parsed = SphinxLibrary.ParseOptions(0, definitions, options.Length + 1, values, 1);
            if (parsed == 0)
            {
                throw new InvalidDataException("the recogniser does not take its options: " + string.Join(' ', options.ToArray()));
            }

            var decoder = SphinxLibrary.Create(parsed);
            _ = SphinxLibrary.FreeOptions(parsed);
            return decoder != 0 ? new(decoder) : throw new InvalidDataException("the recogniser does not start with its model: " + string.Join(' ', options.ToArray()));
        }
        finally
        {
            for (var i = 0; i <= options.Length; i++)
            {
                Marshal.FreeCoTaskMem((nint)values[i]);
            }
        }
    }

    /// <param name="beams">How far below the best path another may fall before it is given up; a search keeps those it was made with.</param>
    /// <exception cref="InvalidDataException">The grammar is broken or has a word without a pronunciation.</exception>
    public void SetGrammar(string name, string grammar, Beams beams)
    {
        var options = SphinxLibrary.OptionsOf(handle);
        SphinxLibrary.SetOption(options, "-beam", beams.State);
        SphinxLibrary.SetOption(options, "-pbeam", beams.State);
        SphinxLibrary.SetOption(options, "-wbeam", beams.Word);
        if (SphinxLibrary.SetGrammar(handle, name, grammar) != 0)
        {
            throw new InvalidDataException($"the recogniser does not take the grammar '{name}'");
        }
    }

    public void SetPhoneLoop(string name)
    {
        if (SphinxLibrary.SetPhoneLoop(handle, name, null) != 0)
        {
            throw new InvalidDataException("the recogniser does not take a phone loop");
        }
    }

    public void Remove(string name) => _ = SphinxLibrary.RemoveSearch(handle, name);

    /// <summary>Decodes a whole utterance on a fresh stream, so that nothing of an earlier one is left in noise or level estimates.</summary>
    public unsafe Decoded Decode(string search, PcmAudio speech)
    {
        if (SphinxLibrary.SetSearch(handle, search) != 0)
        {
            throw new InvalidOperationException($"no search '{search}' was set");
        }

        _ = SphinxLibrary.StartStream(handle);
        _ = SphinxLibrary.StartUtterance(handle);
        fixed (short* samples = speech.Samples)
        {
            _ = SphinxLibrary.Process(handle, samples, (nuint)speech.Samples.Length, 0, 1);
        }

        _ = SphinxLibrary.EndUtterance(handle);
        var words = SphinxLibrary.Hypothesis(handle, out _);
        return new(words == 0 ? null : Marshal.PtrToStringUTF8(words), Segments());
    }

    protected override bool ReleaseHandle() => SphinxLibrary.Free(handle) >= 0;

    private List<DecodedSegment> Segments()
    {
        var segments = new List<DecodedSegment>();
        for (var at = SphinxLibrary.FirstSegment(handle, out _); at != 0; at = SphinxLibrary.NextSegment(at))
        {
            SphinxLibrary.Frames(at, out var first, out var last);
            _ = SphinxLibrary.Scores(at, out var acoustic, out _, out _);
            segments.Add(new(Marshal.PtrToStringUTF8(SphinxLibrary.Word(at)) ?? "", first, last, acoustic));
        }

        return segments;
    }
}

/// <summary>The likelihood, against the best path's, below which a search gives up a path: within words, and at their ends.</summary>
internal readonly record struct Beams(double State, double Word)
{
    /// <summary>The decoder's own defaults.</summary>
    public static readonly Beams Usual = new(1e-48, 7e-29);

    /// <summary>For words the sound may not fit at all: they are followed to the end, to tell by how much.</summary>
    public static readonly Beams Wide = new(1e-200, 1e-200);
}

/// <summary>What a search made of an utterance.</summary>
/// <param name="Words">Null where the sound does not fit the grammar at all.</param>
internal sealed record Decoded(string? Words, IReadOnlyList<DecodedSegment> Segments)
{
    /// <summary>The acoustic score summed over all words and fillers, in the decoder's log units; higher is a better fit.</summary>
    public double Score => Segments.Sum(s => (double)s.Score);

    /// <summary>Ten-millisecond frames.</summary>
    public int Frames => Segments.Count == 0 ? 0 : Segments[^1].Last + 1;

    /// <summary>Ten-millisecond frames of words.</summary>
    public int WordFrames => Segments.Where(s => !s.IsFiller).Sum(s => s.Frames);
}

/// <summary>A word or filler with its frames, both counted in.</summary>
internal readonly record struct DecodedSegment(string Word, int First, int Last, int Score)
{
    public int Frames => Last - First + 1;

    public bool IsFiller => Word.Length == 0 || Word[0] is '<' or '[' or '+' or '(';
}
