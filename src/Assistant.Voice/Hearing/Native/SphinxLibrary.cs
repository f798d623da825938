using System.Runtime.InteropServices;

namespace Assistant.Voice.Hearing.Native;

/// <summary>The functions of PocketSphinx 0.8 (BSD licence) that hearing needs; none with variable arguments.</summary>
internal static unsafe partial class SphinxLibrary
{
    private const string PocketSphinx = "libpocketsphinx.so.3";
    private const string SphinxBase = "libsphinxbase.so.3";
    private const string C = "libc.so.6";

    [LibraryImport(PocketSphinx, EntryPoint = "ps_args")]
    public static partial nint Arguments();

    [LibraryImport(SphinxBase, EntryPoint = "cmd_ln_parse_r")]
    public static partial nint ParseOptions(nint existing, nint definitions, int count, byte** values, int strict);

    [LibraryImport(SphinxBase, EntryPoint = "cmd_ln_free_r")]
    public static partial int FreeOptions(nint options);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_init")]
    public static partial nint Create(nint options);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_free")]
    public static partial int Free(nint decoder);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_get_config")]
    public static partial nint OptionsOf(nint decoder);

    [LibraryImport(SphinxBase, EntryPoint = "cmd_ln_set_float_r", StringMarshalling = StringMarshalling.Utf8)]
    public static partial void SetOption(nint options, string name, double value);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_set_jsgf_string", StringMarshalling = StringMarshalling.Utf8)]
    public static partial int SetGrammar(nint decoder, string name, string grammar);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_set_allphone_file", StringMarshalling = StringMarshalling.Utf8)]
    public static partial int SetPhoneLoop(nint decoder, string name, string? path);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_set_search", StringMarshalling = StringMarshalling.Utf8)]
    public static partial int SetSearch(nint decoder, string name);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_unset_search", StringMarshalling = StringMarshalling.Utf8)]
    public static partial int RemoveSearch(nint decoder, string name);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_start_stream")]
    public static partial int StartStream(nint decoder);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_start_utt")]
    public static partial int StartUtterance(nint decoder);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_process_raw")]
    public static partial int Process(nint decoder, short* samples, nuint count, int noSearch, int wholeUtterance);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_decode_senscr")]
    public static partial int ProcessScores(nint decoder, nint file);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_end_utt")]
    public static partial int EndUtterance(nint decoder);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_get_hyp")]
    public static partial nint Hypothesis(nint decoder, out int score);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_seg_iter")]
    public static partial nint FirstSegment(nint decoder, out int score);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_seg_next")]
    public static partial nint NextSegment(nint segment);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_seg_word")]
    public static partial nint Word(nint segment);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_seg_frames")]
    public static partial void Frames(nint segment, out int first, out int last);

    [LibraryImport(C, EntryPoint = "fopen", StringMarshalling = StringMarshalling.Utf8)]
    public static partial nint OpenFile(string path, string mode);

    [LibraryImport(C, EntryPoint = "fflush")]
    public static partial int FlushFiles(nint file);

    [LibraryImport(C, EntryPoint = "fclose")]
    public static partial int CloseFile(nint file);

    [LibraryImport(PocketSphinx, EntryPoint = "ps_seg_prob")]
    public static partial int Scores(nint segment, out int acoustic, out int language, out int backoff);
}
