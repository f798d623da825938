using System.IO.Compression;
using System.Security.Cryptography;
using System.Text.Json;
using Assistant.Records.Storage;

namespace Assistant.Records.Exchange;

/// <summary>The file of one visit: a zip of visit.json, its pictures, and a manifest with the hash of each.</summary>
internal static class VisitArchive
{
    private const string ManifestName = "manifest.json";
    private const string VisitName = "visit.json";
    private const int MostEntries = 2_000;
    private const long LargestEntry = 64_000_000;
    private const long LargestTotal = 512_000_000;

    private static readonly DateTimeOffset Undated = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly JsonSerializerOptions Options = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase, WriteIndented = true };

    public static byte[] Write(VisitFile visit, IReadOnlyDictionary<string, byte[]> pictures)
    {
        var parts = pictures.OrderBy(p => p.Key, StringComparer.Ordinal).Select(p => (Name: PictureName(p.Key), Content: p.Value))
            .Prepend((Name: VisitName, Content: JsonSerializer.SerializeToUtf8Bytes(visit, Options))).ToList();
        var manifest = parts.ToDictionary(p => p.Name, p => Hash(p.Content));
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, content) in parts.Prepend((ManifestName, JsonSerializer.SerializeToUtf8Bytes(manifest, Options))))
            {
                var entry = zip.CreateEntry(name);
                entry.LastWriteTime = Undated;
                using var open = entry.Open();
                open.Write(content);
            }
        }

        return stream.ToArray();
    }

    /// <exception cref="RecordsException">It is no such file, is too large, or a part is missing, added or changed.</exception>
    public static (VisitFile Visit, IReadOnlyDictionary<string, byte[]> Pictures) Read(byte[] file)
    {
        try
        {
            var parts = Parts(file);
            if (!parts.ContainsKey(ManifestName))
            {
                throw Bad($"it is a zip, but not one that export wrote: {ManifestName} is missing");
            }

            var manifest = JsonSerializer.Deserialize<Dictionary<string, string>>(Part(parts, ManifestName), Options) ?? throw Bad("its manifest is empty");
            parts.Remove(ManifestName);
            foreach (var name in manifest.Keys.Union(parts.Keys).Order(StringComparer.Ordinal))
            {
                if (!manifest.TryGetValue(name, out var hash) || !parts.TryGetValue(name, out var content) || Hash(content) != hash)
                {
                    throw Bad($"{name} is missing, was added or was changed");
                }
            }

            var visit = JsonSerializer.Deserialize<VisitFile>(Part(parts, VisitName), Options);
            if (visit is not { Schema: VisitFile.Known, Visit: not null, Events: not null, Pictures: not null, Head: not null })
            {
                throw Bad("this release does not know its schema");
            }

            return (visit, visit.Pictures.Distinct().ToDictionary(id => id, id => Part(parts, PictureName(id))));
        }
        catch (Exception broken) when (broken is InvalidDataException or JsonException or FormatException or NotSupportedException)
        {
            throw Bad(!BeginsAsZip(file) ? "it is no visit's file; export writes one (export VISIT --out FILE)"
                : broken is InvalidDataException ? "it was cut short or damaged on its way"
                : $"what stands in it can not be read ({broken.Message.ReplaceLineEndings(" ").TrimEnd('.')})");
        }
    }

    // The signature of a zip's first part: PKWARE APPNOTE 4.3.7.
    private static bool BeginsAsZip(byte[] file) => file.AsSpan().StartsWith("PK\u0003\u0004"u8);

    public static RecordsException Bad(string why) => new(RecordsFault.Refused, $"This visit file can not be taken: {why}. Nothing was imported; ask for the file again.");

    private static Dictionary<string, byte[]> Parts(byte[] file)
    {
        using var zip = new ZipArchive(new MemoryStream(file), ZipArchiveMode.Read);
        if (zip.Entries.Count > MostEntries)
        {
            throw Bad($"it has more than {MostEntries} parts");
        }

        var parts = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        var total = 0L;
        foreach (var entry in zip.Entries)
        {
            using var open = entry.Open();
            var content = Bounded(open, Math.Min(LargestEntry, LargestTotal - total));
            total += content.Length;
            if (!parts.TryAdd(entry.FullName, content))
            {
                throw Bad($"{entry.FullName} is in it twice");
            }
        }

        return parts;
    }

    // The size a zip claims is not believed: a small file can unpack to more than the memory holds.
    private static byte[] Bounded(Stream stream, long most)
    {
        using var kept = new MemoryStream();
        var buffer = new byte[81_920];
        for (var read = stream.Read(buffer); read > 0; read = stream.Read(buffer))
        {
            kept.Write(buffer, 0, read);
            if (kept.Length > most)
            {
                throw Bad("it unpacks to more than a visit can hold");
            }
        }

        return kept.ToArray();
    }

    private static byte[] Part(Dictionary<string, byte[]> parts, string name) => parts.GetValueOrDefault(name) ?? throw Bad($"{name} is missing");

    private static string PictureName(string id) => $"pictures/{id}.jpg";

    private static string Hash(byte[] content) => Convert.ToHexStringLower(SHA256.HashData(content));
}
