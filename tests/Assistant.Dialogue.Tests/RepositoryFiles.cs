using Assistant.Dialogue.Files;

namespace Assistant.Dialogue.Tests;

/// <summary>The dialogue's own data, read from the repository as the program's edge reads it.</summary>
internal static class RepositoryFiles
{
    public static string Root { get; } = FindRoot();

    public static DialogFile Read(string path) => new(path, File.ReadAllText(Path.Combine(Root, path)));

    public static DialogFile[] ReadAll(string folder, string pattern) =>
        [.. Directory.GetFiles(Path.Combine(Root, folder), pattern)
            .Order(StringComparer.Ordinal)
            .Select(path => Read(Path.GetRelativePath(Root, path).Replace('\\', '/')))];

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Assistant.sln")))
        {
            folder = folder.Parent ?? throw new DirectoryNotFoundException("No Assistant.sln above the tests.");
        }

        return folder.FullName;
    }
}
