using System.Reflection;

namespace Assistant.EndToEnd.Tests.Fixtures;

/// <summary>Where things stand, as the build wrote it into this assembly.</summary>
internal static class Repository
{
    public static string Root { get; } = Metadata("RepositoryRoot");

    /// <summary>The program as it was built beside these tests.</summary>
    public static string Program { get; } = Path.Combine(Root, "src/Assistant.App/bin", Metadata("Configuration"), "net10.0/Assistant.App.dll");

    /// <summary>Screenshots for a person to look at; not part of the repository.</summary>
    public static string Screenshots { get; } = Directory.CreateDirectory(Path.Combine(Root, "artifacts/screenshots")).FullName;

    private static string Metadata(string key) =>
        typeof(Repository).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().First(a => a.Key == key).Value!;
}
