using System.Data.Common;
using Assistant.Records.Cylinders;
using Assistant.Records.Tests.Support;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Assistant.Records.Tests.Cylinders;

public sealed class LastUsedQueryTests
{
    [Fact]
    public async Task What_every_opening_asks_for_is_found_without_reading_all_that_was_ever_said()
    {
        var heard = new LastCommand();
        await using var records = await TemporaryRecords.OpenAsync(heard);

        await new CylinderBookReader(records.Database).LastUsedAsync(new(2026, 11, 25, 9, 0, 0, TimeSpan.Zero));

        Assert.Contains("IX_events_kind", heard.Plan, StringComparison.Ordinal);
        Assert.DoesNotContain("SCAN", heard.Plan, StringComparison.Ordinal);
    }

    /// <summary>How SQLite goes about the last question it was asked.</summary>
    private sealed class LastCommand : DbCommandInterceptor
    {
        public string Plan { get; private set; } = "";

        public override async ValueTask<DbDataReader> ReaderExecutedAsync(DbCommand command, CommandExecutedEventData eventData, DbDataReader result, CancellationToken cancellationToken = default)
        {
            await using var explain = command.Connection!.CreateCommand();
            explain.CommandText = "EXPLAIN QUERY PLAN " + command.CommandText;
            foreach (DbParameter parameter in command.Parameters)
            {
                var same = explain.CreateParameter();
                (same.ParameterName, same.Value) = (parameter.ParameterName, parameter.Value);
                explain.Parameters.Add(same);
            }

            List<string> steps = [];
            await using var reader = await explain.ExecuteReaderAsync(cancellationToken);
            while (await reader.ReadAsync(cancellationToken))
            {
                steps.Add(reader.GetString(3));
            }

            Plan = string.Join('\n', steps);
            return result;
        }
    }
}
