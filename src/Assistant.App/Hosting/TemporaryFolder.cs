namespace Assistant.App.Hosting;

/// <summary>An empty folder for one run, taken away at the end.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("coldwalk-").FullName;

    public void Dispose()
    {
        try
        {
            Directory.Delete(Path, recursive: true);
        }
        catch (IOException)
        {
            // A file still held open elsewhere; the system clears its temporary folder itself.
        }
    }
}
