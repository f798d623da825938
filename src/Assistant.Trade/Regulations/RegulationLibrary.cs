using System.Collections.Immutable;
using System.Reflection;

namespace Assistant.Trade.Regulations;

/// <summary>The rules of shared/regulations, embedded in the program.</summary>
public static class RegulationLibrary
{
    private const string Folder = "regulations/";
    private const string GwpFileName = "gwp.json";

    private static readonly Assembly Home = typeof(RegulationLibrary).Assembly;

    private static readonly Lazy<GwpTable> LazyGwp = new(() => RegulationJson.ReadGwp(GwpFileName, Text(GwpFileName)));

    private static readonly Lazy<ImmutableArray<Regulation>> LazyAll = new(() =>
        [.. FileNames().Where(f => f != GwpFileName).Select(f => RegulationJson.ReadRule(f, Text(f)))]);

    /// <summary>Every rule, of whatever validity, by id.</summary>
    /// <exception cref="RegulationDataException">A file cannot be used.</exception>
    public static ImmutableArray<Regulation> All => LazyAll.Value;

    public static GwpTable Gwp => LazyGwp.Value;

    /// <summary>The rules that hold for this appliance there on that day.</summary>
    /// <exception cref="UnknownSubstanceException">A component of its refrigerant is not known, so that nothing can be said.</exception>
    public static ImmutableArray<Regulation> For(Appliance appliance, Jurisdiction jurisdiction, DateOnly day) =>
        [.. All.Where(r => r.Jurisdiction == jurisdiction && r.AppliesTo(appliance, day))];

    private static IEnumerable<string> FileNames() => Home.GetManifestResourceNames()
        .Where(n => n.StartsWith(Folder, StringComparison.Ordinal))
        .Select(n => n[Folder.Length..])
        .Order(StringComparer.Ordinal);

    private static string Text(string file)
    {
        using var reader = new StreamReader(Home.GetManifestResourceStream(Folder + file) ?? throw new InvalidOperationException($"{file} is not embedded in the program"));
        return reader.ReadToEnd();
    }
}
