using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Reflection;
using System.Security.Cryptography;

namespace Assistant.Trade.Refrigerants;

/// <summary>
/// The refrigerants the product has tables for. What is not here is not known: a wrong table is worse than none. The tables are
/// embedded in the program and read when first used.
/// </summary>
public static class RefrigerantLibrary
{
    private const string Folder = "refrigerants/";

    private static readonly Assembly Home = typeof(RefrigerantLibrary).Assembly;

    private static readonly Lazy<string> Version = new(HashOfTables);

    /// <summary>Every refrigerant, in the order of the summary file.</summary>
    public static ImmutableArray<Refrigerant> All { get; } = ReadSummary();

    private static readonly FrozenDictionary<string, Refrigerant> ByKey = All.ToFrozenDictionary(r => Key(r.Designation), StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, string> OtherNames = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["1234ZE"] = "1234ZE(E)",
        ["1234ZEE"] = "1234ZE(E)",
        ["PROPANE"] = "290",
        ["ISOBUTANE"] = "600A",
        ["AMMONIA"] = "717",
        ["NH3"] = "717",
        ["CO2"] = "744",
        ["CARBONDIOXIDE"] = "744",
    }.ToFrozenDictionary();

    /// <summary>The first twelve hexadecimal digits of the SHA-256 of the tables: a verdict names the data it rests on.</summary>
    public static string DataVersion => Version.Value;

    /// <summary>The refrigerant of that designation or name, however it is written (R-448A, r448a, 448A, "R 404 A", propane); null when it is not in the library.</summary>
    public static Refrigerant? Find(string? text)
    {
        if (text is null)
        {
            return null;
        }

        var key = Key(text);
        return ByKey.GetValueOrDefault(OtherNames.GetValueOrDefault(key, key));
    }

    private static string Key(string text)
    {
        var key = text.Replace("-", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();
        return key.StartsWith('R') && key.Length > 1 && char.IsAsciiDigit(key[1]) ? key[1..] : key;
    }

    private static ImmutableArray<Refrigerant> ReadSummary()
    {
        const string file = "summary.tsv";
        using var text = Open(file);
        return [.. RefrigerantSummary.ReadAll(text, file).Select(Of)];
    }

    private static Refrigerant Of(RefrigerantSummary summary)
    {
        var saturation = new Lazy<SaturationTable>(() => ReadSaturation(summary.Designation));
        return new(summary, saturation, new(() => ReadSuperheated(summary.Designation, saturation.Value)));
    }

    private static SaturationTable ReadSaturation(string designation)
    {
        var file = $"saturation/{designation}.tsv";
        using var text = Open(file);
        return SaturationTable.Read(text, file, designation);
    }

    private static SuperheatedVapour ReadSuperheated(string designation, SaturationTable saturation)
    {
        var file = $"superheat/{designation}.tsv";
        using var text = Open(file);
        return SuperheatedVapour.Read(text, file, designation, saturation);
    }

    internal static StreamReader Open(string file) =>
        new(Home.GetManifestResourceStream(Folder + file) ?? throw new InvalidOperationException($"{file} is not embedded in the program"));

    private static string HashOfTables()
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var name in Home.GetManifestResourceNames().Where(n => n.StartsWith(Folder, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using var text = Open(name[Folder.Length..]);
            hash.AppendData(System.Text.Encoding.UTF8.GetBytes(text.ReadToEnd()));
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset())[..12];
    }
}
