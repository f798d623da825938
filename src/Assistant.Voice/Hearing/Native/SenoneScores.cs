namespace Assistant.Voice.Hearing.Native;

/// <summary>
/// How well each frame of an utterance fits each of the model's sounds (its senones), as one decoder writes it down for others. It lies in
/// memory where the machine has a folder there, readable by nobody else, until the utterance has been heard.
/// </summary>
internal sealed class SenoneScores : IDisposable
{
    private const string Memory = "/dev/shm";

    private SenoneScores(string folder) => Folder = folder;

    /// <summary>Where the decoder that scores is to write, by its option -senlogdir.</summary>
    public string Folder { get; }

    public static SenoneScores Create()
    {
        if (OperatingSystem.IsWindows() || !Directory.Exists(Memory))
        {
            return new(Directory.CreateTempSubdirectory("coldwalk-hearing-").FullName);
        }

        var folder = Path.Combine(Memory, "coldwalk-hearing-" + Path.GetRandomFileName());
        return new(Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute).FullName);
    }

    /// <summary>Forgets the last utterance; the next one is kept.</summary>
    public void Clear()
    {
        foreach (var file in Directory.GetFiles(Folder))
        {
            File.Delete(file);
        }
    }

    /// <param name="take">Takes the open file.</param>
    public int Read(Func<nint, int> take)
    {
        // The decoder keeps its file open, and the end of it in a buffer, until the next utterance.
        _ = SphinxLibrary.FlushFiles(0);
        var file = SphinxLibrary.OpenFile(Directory.GetFiles(Folder).Single(), "rb");
        try
        {
            return file != 0 ? take(file) : throw new IOException($"{Folder}: what was scored can not be read");
        }
        finally
        {
            if (file != 0)
            {
                _ = SphinxLibrary.CloseFile(file);
            }
        }
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
