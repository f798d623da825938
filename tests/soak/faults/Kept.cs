namespace Assistant.Faults;

/// <summary>A copy of a folder of records that outlives the program, for the check; cleared away at the end.</summary>
internal sealed class Kept : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("coldwalk-kept-");

    public string Path => folder.FullName;

    public void Copy(string data)
    {
        foreach (var file in Directory.EnumerateFiles(data, "*", SearchOption.AllDirectories))
        {
            var to = System.IO.Path.Combine(Path, System.IO.Path.GetRelativePath(data, file));
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }
    }

    public void Dispose() => folder.Delete(recursive: true);
}
