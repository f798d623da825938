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
        Select(search);
        _ = SphinxLibrary.StartStream(handle);
        _ = SphinxLibrary.StartUtterance(handle);
        fixed (short* samples = speech.Samples)
        {
            _ = SphinxLibrary.Process(handle, samples, (nuint)speech.Samples.Length, 0, 1);
        }

        _ = SphinxLibrary.EndUtterance(handle);
        return Result();
    }

    /// <summary>Decodes an utterance whose frames another decoder has scored. Not for a decoder that is also given sound: the library loses its place.</summary>
    public Decoded Decode(string search, SenoneScores scores)
    {
        Select(search);
        return scores.Read(file => SphinxLibrary.ProcessScores(handle, file)) >= 0 ? Result() : throw new InvalidOperationException($"'{search}' can not read how the utterance fits");
    }

    protected override bool ReleaseHandle() => SphinxLibrary.Free(handle) >= 0;

    private void Select(string search)
    {
        if (SphinxLibrary.SetSearch(handle, search) != 0)
        {
            throw new InvalidOperationException($"no search '{search}' was set");
        }
    }

    private Decoded Result()
    {
        var words = SphinxLibrary.Hypothesis(handle, out _);
        return new(words == 0 ? null : Marshal.PtrToStringUTF8(words), Segments());
    }

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
