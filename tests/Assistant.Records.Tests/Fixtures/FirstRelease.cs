using Assistant.Records.Assets;
using Assistant.Records.Conversations;
using Assistant.Records.Erasure;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.Pictures;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Postgres;
using Assistant.Records.Storage.Sqlite;
using Assistant.Records.Tests.Pictures;
using Assistant.Records.Tests.Support;
using Microsoft.Data.Sqlite;

namespace Assistant.Records.Tests.Fixtures;

/// <summary>
/// The database that a release leaves behind, with something in every table: made once a release, kept, and opened by the tests
/// of every later one. All of it is invented.
/// </summary>
internal static class FirstRelease
{
    public const string Visit = "first-visit";
    public const string SecondVisit = "second-visit";

    public static string KeptPath => Repository.PathOf("tests", "fixtures", "records", "first-release.db");

    public static string KeptCopy => Repository.PathOf("tests", "fixtures", "records", "first-release-postgres.sql");

    /// <param name="path">A file of records, or a .sql file: then a copy of a PostgreSQL database.</param>
    public static async Task MakeAsync(string path)
    {
        if (!path.EndsWith(".sql", StringComparison.Ordinal))
        {
            await FillAsync(new SqliteRecords(path));
            SqliteConnection.ClearAllPools();
            return;
        }

        var connection = await TestDatabases.NewEmptyAsync();
        await FillAsync(PostgresRecords.Of(connection));
        await PostgresTools.RunAsync("pg_dump", "--no-owner", "--no-privileges", "-f", path, connection);

        // What a later pg_dump adds for a later psql, an earlier one does not know.
        var lines = await File.ReadAllLinesAsync(path);
        await File.WriteAllLinesAsync(path, lines.Where(l => !l.StartsWith(@"\restrict", StringComparison.Ordinal) && !l.StartsWith(@"\unrestrict", StringComparison.Ordinal)));
    }

    private static async Task FillAsync(IRecordsDatabase database)
    {
        await using (var log = await EventLog.OpenAsync(database))
        {
            var asset = AssetFile.Read(await File.ReadAllTextAsync(Repository.PathOf("shared", "demo", "asset.json")));
            await new AssetStore(database).RecordAsync(asset, Invented.Morning);
            using var pictures = new PictureStore(database);
            var picture = await pictures.KeepAsync(InventedPictures.Marked(320, 240));
            await log.AppendAsync(InventedVisit.Log(Visit, picture.Id));

            // A second visit to the same unit: a message whose reply waits in the outbox, a reminder, and one who asked to be erased.
            var ids = new Queue<string>([SecondVisit]);
            using var service = new ConversationService(log, new CountingEngine(), new() { NewVisitId = ids.Dequeue });
            await service.OpenVisitAsync(new("sms", "+15550100", null, asset.Id, default, "Robin", Later));
            await service.HandleAsync(new("sms-1", "sms", "+15550100", "Robin", Later, "gauge reads 24"), outbox: true);
            await service.HandleAsync(new("sms-2", "sms", "+15550100", "Sam", Later, "please forget me"));
            await log.AppendAsync(new(SecondVisit, 3, [InventedVisit.Reminder(Later)]));
            await new PersonEraser(log).EraseAsync("Sam", "office", Later.AddDays(1));
            await new ReplyOutbox(database).AddAsync("sms", "+15550100", "reminder second-visit 4", CountingEngine.Saying("Read the head again."), Later.AddMinutes(20));
        }
    }

    public static DateTimeOffset Later { get; } = Invented.Morning.AddDays(30);
}
