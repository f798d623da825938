namespace Assistant.Voice.Hearing.Native;

/// <summary>
/// How well each frame of the utterance decoded last fits each of the model's sounds (its senones), as the library writes it down and reads it back. It lies
/// in memory where the machine has a folder there, readable by nobody else, and is gone with the next utterance.
/// </summary>
internal sealed class SenoneScores : IDisposable
{
    private const string Memory = "/dev/shm";

    private SenoneScores(string folder) => Folder = folder;

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

    /// <summary>Forgets what is there; the next utterance decoded is kept.</summary>
    public void Clear()
    {
        foreach (var file in Directory.GetFiles(Folder))
        {
            File.Delete(file);
        }
    }

    /// <summary>Hands on what is kept.</summary>
    /// <param name="take">Takes the open file of the first utterance since the last <see cref="Clear"/>; those after it hold nothing of their own.</param>
    public int Read(Func<nint, int> take)
    {
        var file = SphinxLibrary.OpenFile(Directory.GetFiles(Folder).Min(StringComparer.Ordinal) ?? throw new InvalidOperationException("no utterance was decoded"), "rb");
        try
        {
            return take(file);
        }
        finally
        {
            _ = SphinxLibrary.CloseFile(file);
        }
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
