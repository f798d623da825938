using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Storage.Postgres;

/// <summary>The same tables in PostgreSQL, with migrations of their own. Text sorts and compares by its bytes, as in SQLite.</summary>
public sealed class PostgresContext(DbContextOptions<PostgresContext> options) : RecordsContext(options)
{
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        base.ConfigureConventions(configurationBuilder);
        configurationBuilder.Properties<string>().UseCollation("C");
        configurationBuilder.Properties<DateTimeOffset>().UseCollation("C");
    }

    // In the order of their ids, so that no two transactions wait for each other.
    internal override IQueryable<VisitRow> HeldVisits(IReadOnlyList<string> ids)
    {
        var wanted = ids.ToArray();
        return Visits.FromSql($"SELECT * FROM visits WHERE id = ANY ({wanted}) ORDER BY id FOR UPDATE");
    }

    internal override Task HoldAsync(string name, CancellationToken cancellation) =>
        Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock(hashtextextended({name}, 0))", cancellation);
}
