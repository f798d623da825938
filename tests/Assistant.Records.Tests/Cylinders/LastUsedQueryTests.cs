using Assistant.Records.Storage.Sqlite;
using Assistant.Records.Tests.Support;
using Microsoft.Data.Sqlite;

namespace Assistant.Records.Tests.Cylinders;

public sealed class LastUsedQueryTests
{
    [Fact]
    public async Task What_every_opening_asks_for_is_found_without_reading_all_that_was_ever_said()
    {
        await using var records = await TemporaryRecords.OpenAsync();

        var plan = Plan(records.Path, LookupLine.CylinderEvents, "2026-08-27T09:00:00.0000000Z", "2026-11-25T09:00:00.0000000Z");

        Assert.Contains("IX_events_kind", plan, StringComparison.Ordinal);
        Assert.DoesNotContain("SCAN", plan, StringComparison.Ordinal);
    }

    /// <summary>How SQLite goes about a question.</summary>
    private static string Plan(string path, string sql, params string[] values)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        using var explain = connection.CreateCommand();
        explain.CommandText = "EXPLAIN QUERY PLAN " + sql;
        for (var i = 0; i < values.Length; i++)
        {
            explain.Parameters.AddWithValue($"?{i + 1}", values[i]);
        }

        List<string> steps = [];
        using var reader = explain.ExecuteReader();
        while (reader.Read())
        {
            steps.Add(reader.GetString(3));
        }

        return string.Join('\n', steps);
    }
}
