namespace Assistant.Records.Reports;

/// <summary>Files that travel inside the program.</summary>
internal static class Resources
{
    public static byte[] Bytes(string name)
    {
        using var stream = Open(name);
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return memory.ToArray();
    }

    public static string Text(string name)
    {
        using var reader = new StreamReader(Open(name));
        return reader.ReadToEnd();
    }

    private static Stream Open(string name) =>
        typeof(Resources).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"{name} is not in the program.");
}
