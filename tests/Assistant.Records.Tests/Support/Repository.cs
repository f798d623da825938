namespace Assistant.Records.Tests.Support;

/// <summary>Files of the repository, found from where the tests run.</summary>
internal static class Repository
{
    private static readonly string Root = FindRoot(AppContext.BaseDirectory);

    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string FindRoot(string from) =>
        File.Exists(Path.Combine(from, "Assistant.sln")) ? from : FindRoot(Path.GetDirectoryName(from.TrimEnd(Path.DirectorySeparatorChar))!);
}
