using System.IO.Compression;
using Assistant.Records.Assets;
using Assistant.Records.Chain;
using Assistant.Records.Exchange;
using Assistant.Records.Pictures;
using Assistant.Records.Signing;
using Assistant.Records.Storage;
using Assistant.Records.Tests.Pictures;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Exchange;

public abstract class VisitExchangeTests(Store store) : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-").FullName;
    private TemporaryRecords here = null!;
    private TemporaryRecords there = null!;
    private string pictureId = "";
    private byte[] file = [];

    public async Task InitializeAsync()
    {
        (here, there) = (await TemporaryRecords.OpenAsync(store), await TemporaryRecords.OpenAsync(store));
        await new AssetStore(here.Database).RecordAsync(AssetFile.Read(await File.ReadAllTextAsync(Repository.PathOf("shared", "demo", "asset.json"))), Invented.Morning);
        using var pictures = new PictureStore(here.Database);
        pictureId = (await pictures.KeepAsync(InventedPictures.Marked(320, 240))).Id;
        await here.Log.AppendAsync(InventedVisit.Log("v-1", pictureId));
        file = (await new VisitExporter(here.Database, SigningKey.Open(folder)).ExportAsync("v-1"))!;
    }

    public async Task DisposeAsync()
    {
        await here.DisposeAsync();
        await there.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Another_installation_verifies_the_file_and_has_the_visit_as_it_was()
    {
        var imported = await new VisitImporter(there.Database).ImportAsync(file, Invented.Morning);

        Assert.Equal(("v-1", 30, false), (imported.VisitId, imported.Events, imported.WasThere));
        Assert.Equal((await here.Log.ReadAsync("v-1")).Select(e => e.ToString()), (await there.Log.ReadAsync("v-1")).Select(e => e.ToString()));
        Assert.True((await new ChainVerifier(there.Database).VerifyAsync()).Holds);
        using var pictures = new PictureStore(there.Database);
        Assert.Equal(320, (await pictures.FindAsync(pictureId))!.Width);
        Assert.Equal("invented orifice 3", (await new AssetStore(there.Database).FindAsync("demo-diner-cooler"))!.Details["valve_orifice"]);
    }

    [Fact]
    public async Task The_same_file_again_adds_nothing()
    {
        await new VisitImporter(there.Database).ImportAsync(file, Invented.Morning);

        Assert.True((await new VisitImporter(there.Database).ImportAsync(file, Invented.Morning)).WasThere);
    }

    [Fact]
    public async Task The_same_log_gives_the_same_bytes() =>
        Assert.Equal(file, await new VisitExporter(here.Database, SigningKey.Open(folder)).ExportAsync("v-1"));

    [Fact]
    public async Task A_visit_that_is_not_there_gives_no_file() =>
        Assert.Null(await new VisitExporter(here.Database, SigningKey.Open(folder)).ExportAsync("v-9"));

    // Whoever changes a part can write the manifest anew, so the chain itself must show it.
    [Theory]
    [InlineData("Robin", "Mallo")]
    [InlineData("12480", "12470")]
    [InlineData("flare made anew", "nothing was done")]
    public async Task A_changed_event_is_found_also_under_a_manifest_made_anew(string was, string becomes)
    {
        var refused = await Assert.ThrowsAsync<RecordsException>(() => new VisitImporter(there.Database).ImportAsync(Forged(was, becomes), Invented.Morning));

        Assert.Equal(RecordsFault.Refused, refused.Fault);
        Assert.Contains("event ", refused.Message, StringComparison.Ordinal);
        Assert.Empty(await there.Log.ReadAsync("v-1"));
    }

    [Fact]
    public async Task Any_byte_of_a_part_that_was_changed_or_lost_is_refused_in_one_line()
    {
        for (var i = 0; i < file.Length; i += Math.Max(1, file.Length / 60))
        {
            var changed = (byte[])file.Clone();
            changed[i] ^= 0x10;
            try
            {
                // What a zip keeps about its parts beside their content may change without harm.
                await new VisitImporter(there.Database).ImportAsync(changed, Invented.Morning);
                Assert.Equal((await here.Log.ReadAsync("v-1")).Select(e => e.ToString()), (await there.Log.ReadAsync("v-1")).Select(e => e.ToString()));
            }
            catch (RecordsException refused)
            {
                Assert.DoesNotContain('\n', refused.Message);
            }
        }

        await Assert.ThrowsAsync<RecordsException>(() => new VisitImporter(there.Database).ImportAsync(file[..(file.Length / 2)], Invented.Morning));
        await Assert.ThrowsAsync<RecordsException>(() => new VisitImporter(there.Database).ImportAsync([1, 2, 3], Invented.Morning));
    }

    [Fact]
    public async Task What_is_no_visits_file_is_told_what_one_is()
    {
        Assert.Equal(NoVisitsFile, await RefusedAsync("not a zip at all"u8.ToArray()));
        Assert.Equal(NoVisitsFile, await RefusedAsync([]));
        Assert.Contains("it was cut short or damaged on its way", await RefusedAsync(file[..(file.Length / 2)]), StringComparison.Ordinal);
        Assert.Contains("it is a zip, but not one that export wrote: manifest.json is missing", await RefusedAsync(Zip("notes.txt", "invented")), StringComparison.Ordinal);
        Assert.Contains("what stands in it can not be read", await RefusedAsync(Zip("manifest.json", "<html>")), StringComparison.Ordinal);
    }

    private const string NoVisitsFile =
        "This visit file can not be taken: it is no visit's file; export writes one (export VISIT --out FILE). Nothing was imported; ask for the file again.";

    private async Task<string> RefusedAsync(byte[] content)
    {
        var refused = await Assert.ThrowsAsync<RecordsException>(() => new VisitImporter(there.Database).ImportAsync(content, Invented.Morning));
        Assert.DoesNotContain('\n', refused.Message);
        return refused.Message;
    }

    private static byte[] Zip(string name, string text)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        using (var writer = new StreamWriter(zip.CreateEntry(name).Open()))
        {
            writer.Write(text);
        }

        return stream.ToArray();
    }

    private byte[] Forged(string was, string becomes)
    {
        using var stream = new MemoryStream();
        stream.Write(file);
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
        {
            var visit = Text(zip, "visit.json");
            Assert.Contains(was, visit, StringComparison.Ordinal);
            var forged = visit.Replace(was, becomes, StringComparison.Ordinal);
            var manifest = Text(zip, "manifest.json").Replace(Hash(visit), Hash(forged), StringComparison.Ordinal);
            Replace(zip, "visit.json", forged);
            Replace(zip, "manifest.json", manifest);
        }

        return stream.ToArray();
    }

    private static string Text(ZipArchive zip, string name)
    {
        using var reader = new StreamReader(zip.GetEntry(name)!.Open());
        return reader.ReadToEnd();
    }

    private static void Replace(ZipArchive zip, string name, string text)
    {
        zip.GetEntry(name)!.Delete();
        using var writer = new StreamWriter(zip.CreateEntry(name).Open());
        writer.Write(text);
    }

    private static string Hash(string text) =>
        Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(text)));
}

public sealed class VisitExchangeTestsOnSqlite() : VisitExchangeTests(Store.Sqlite);

public sealed class VisitExchangeTestsOnPostgres() : VisitExchangeTests(Store.Postgres);
