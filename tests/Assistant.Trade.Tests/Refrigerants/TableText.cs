using Assistant.Trade.Refrigerants;

namespace Assistant.Trade.Tests.Refrigerants;

/// <summary>The text of the tables that the program carries.</summary>
internal static class TableText
{
    public static string[] Lines(string file)
    {
        using var stream = typeof(RefrigerantLibrary).Assembly.GetManifestResourceStream("refrigerants/" + file) ?? throw new InvalidOperationException(file);
        using var text = new StreamReader(stream);
        return text.ReadToEnd().TrimEnd('\n').Split('\n');
    }

    /// <summary>The rows below the line of column names, as numbers.</summary>
    public static double[][] Rows(string file) =>
        [.. Lines(file).SkipWhile(l => l[0] == '#').Skip(1).Select(l => l.Split('\t').Select(c => double.Parse(c, System.Globalization.CultureInfo.InvariantCulture)).ToArray())];
}
