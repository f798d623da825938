namespace Assistant.Voice.Hearing.Native;

/// <summary>
/// How well each frame of an utterance fits each of the model's sounds (its senones), as one decoder writes it down for others. It lies in
/// memory where the machine has a folder there, readable by nobody else, until the utterance has been heard. A file beside the scores is
/// locked as long as the program lives, so that the next start knows what a killed one left behind.
/// </summary>
internal sealed class SenoneScores : IDisposable
{
    private const string Memory = "/dev/shm";
    private const string Prefix = "coldwalk-hearing-";
    private const string LockName = "lock";
    private const string Scored = "*.sen";

    private readonly FileStream held;

    private SenoneScores(string folder)
    {
        Folder = folder;
        held = new(Path.Combine(folder, LockName), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None);
    }

    /// <summary>Where the decoder that scores is to write, by its option -senlogdir.</summary>
    public string Folder { get; }

    public static SenoneScores Create()
    {
        var isInMemory = !OperatingSystem.IsWindows() && Directory.Exists(Memory);
        RemoveLeft(isInMemory ? Memory : Path.GetTempPath());
        if (!isInMemory || OperatingSystem.IsWindows())
        {
            return new(Directory.CreateTempSubdirectory(Prefix).FullName);
        }

        var folder = Path.Combine(Memory, Prefix + Path.GetRandomFileName());
        return new(Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute).FullName);
    }

    /// <summary>Forgets the last utterance; the next one is kept.</summary>
    public void Clear()
    {
        foreach (var file in Directory.GetFiles(Folder, Scored))
        {
            File.Delete(file);
        }
    }

    /// <param name="take">Takes the open file.</param>
    public int Read(Func<nint, int> take)
    {
        // The decoder keeps its file open, and the end of it in a buffer, until the next utterance.
        _ = SphinxLibrary.FlushFiles(0);
        var file = SphinxLibrary.OpenFile(Directory.GetFiles(Folder, Scored).Single(), "rb");
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

    public void Dispose()
    {
        held.Dispose();
        Directory.Delete(Folder, recursive: true);
    }

    // The lock goes with the process that held it, however it ended. A folder without one is just being made.
    private static void RemoveLeft(string root)
    {
        foreach (var folder in Directory.EnumerateDirectories(root, Prefix + "*"))
        {
            try
            {
                using (new FileStream(Path.Combine(folder, LockName), FileMode.Open, FileAccess.ReadWrite, FileShare.None))
                {
                    Directory.Delete(folder, recursive: true);
                }
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // Another program's, or another person's.
            }
        }
    }
}
