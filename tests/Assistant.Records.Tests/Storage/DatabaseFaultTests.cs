using System.Data.Common;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Sqlite;
using Assistant.Records.Tests.Support;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Assistant.Records.Tests.Storage;

public sealed class DatabaseFaultTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-").FullName;

    [Fact]
    public async Task A_full_disk_refuses_the_message_keeps_what_was_there_and_goes_on_once_there_is_room()
    {
        var disk = new SmallDisk();
        await using var records = await TemporaryRecords.OpenAsync(disk);
        using var service = new ConversationService(records.Log, new CountingEngine());
        await service.HandleAsync(Invented.Message("m-1"));
        disk.PagesMore = 0;

        var full = await Assert.ThrowsAsync<RecordsException>(() => service.HandleAsync(Invented.Message("m-2", new string('x', 50_000))));
        Assert.Equal(RecordsFault.DiskFull, full.Fault);
        Assert.StartsWith("The disk that holds ", full.Message, StringComparison.Ordinal);
        Assert.Null(await records.Log.ReplyToAsync("chat", "m-2"));

        disk.PagesMore = null;
        Assert.EndsWith("after 2", (await service.HandleAsync(Invented.Message("m-2"))).Say.Full, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_locked_file_refuses_the_message_in_one_line()
    {
        await using var records = await TemporaryRecords.OpenAsync(new Impatience());
        using var service = new ConversationService(records.Log, new CountingEngine());
        await service.HandleAsync(Invented.Message("m-1"));
        await using var other = new SqliteConnection($"Data Source={records.Path};Pooling=False");
        await other.OpenAsync();
        await using (await other.BeginTransactionAsync())
        {
            var locked = await Assert.ThrowsAsync<RecordsException>(() => service.HandleAsync(Invented.Message("m-2")));
            Assert.Equal(RecordsFault.Locked, locked.Fault);
            Assert.DoesNotContain('\n', locked.Message);
        }

        Assert.Equal("38 after 2", (await service.HandleAsync(Invented.Message("m-2"))).Say.Full);
    }

    [Fact]
    public async Task A_read_only_file_can_be_read_and_refuses_the_message()
    {
        await using var records = await TemporaryRecords.OpenAsync();
        await records.Log.AppendAsync(Invented.FirstAppend("v"));
        await using var log = await EventLog.OpenAsync(new SqliteRecords(records.Path, readOnly: true));

        Assert.Single(await log.ReadAsync("v"));
        var refused = await Assert.ThrowsAsync<RecordsException>(() => log.AppendAsync(new("v", 1, [Invented.Heard("38")])));
        Assert.Equal(RecordsFault.ReadOnly, refused.Fault);
    }

    [Fact]
    public async Task A_file_that_is_no_database_is_named_and_left_alone()
    {
        var path = Path.Combine(folder, "letter.db");
        await File.WriteAllTextAsync(path, new string('a', 5000));

        var refused = await Assert.ThrowsAsync<RecordsException>(() => EventLog.OpenAsync(new SqliteRecords(path)));

        Assert.Equal(RecordsFault.Foreign, refused.Fault);
        Assert.Equal($"{path} is not a record file of Coldwalk. Name another file, or move this one away.", refused.Message);
        Assert.Equal(new string('a', 5000), await File.ReadAllTextAsync(path));
    }

    [Fact]
    public async Task Another_programs_database_is_named_and_left_alone()
    {
        var path = Path.Combine(folder, "other.db");
        Run(path, "CREATE TABLE recipes (name TEXT)");
        var before = await File.ReadAllBytesAsync(path);

        var refused = await Assert.ThrowsAsync<RecordsException>(() => EventLog.OpenAsync(new SqliteRecords(path)));

        Assert.Equal(RecordsFault.Foreign, refused.Fault);
        Assert.Equal(before, await File.ReadAllBytesAsync(path));
    }

    [Fact]
    public async Task A_file_of_a_later_release_is_named_and_left_alone()
    {
        var path = Path.Combine(folder, "later.db");
        await (await EventLog.OpenAsync(new SqliteRecords(path))).DisposeAsync();
        Run(path, "INSERT INTO __EFMigrationsHistory VALUES ('29990101000000_Later', '99.0.0')");

        var refused = await Assert.ThrowsAsync<RecordsException>(() => EventLog.OpenAsync(new SqliteRecords(path)));

        Assert.Equal(RecordsFault.Newer, refused.Fault);
        Assert.Equal($"The records in {path} were written by a later release of Coldwalk. Update this program; nothing was changed.", refused.Message);
    }

    [Fact]
    public async Task A_folder_that_is_not_there_is_named()
    {
        var path = Path.Combine(folder, "nowhere", "records.db");

        var refused = await Assert.ThrowsAsync<RecordsException>(() => EventLog.OpenAsync(new SqliteRecords(path)));

        Assert.Equal(RecordsFault.Unreadable, refused.Fault);
        Assert.Contains(path, refused.Message, StringComparison.Ordinal);
    }

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    private static void Run(string path, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    /// <summary>Lets the file grow by so many pages and no more, as a full disk would.</summary>
    private sealed class SmallDisk : DbTransactionInterceptor
    {
        public int? PagesMore { get; set; }

        public override ValueTask<InterceptionResult<DbTransaction>> TransactionStartingAsync(
            DbConnection connection, TransactionStartingEventData eventData, InterceptionResult<DbTransaction> result, CancellationToken cancellationToken = default)
        {
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA page_count";
            var pages = (long)command.ExecuteScalar()!;
            command.CommandText = $"PRAGMA max_page_count = {(PagesMore is { } more ? pages + more : 1_000_000)}";
            command.ExecuteNonQuery();
            return ValueTask.FromResult(result);
        }
    }

    /// <summary>Waits 100 ms for a lock instead of the usual seconds.</summary>
    private sealed class Impatience : DbConnectionInterceptor
    {
        public override Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            ((SqliteConnection)connection).DefaultTimeout = 1;
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA busy_timeout = 100";
            command.ExecuteNonQuery();
            return Task.CompletedTask;
        }
    }
}
