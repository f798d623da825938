using Microsoft.EntityFrameworkCore.Design;

namespace Assistant.Records.Storage.Postgres;

/// <summary>Lets the migration tool see the model; never used at run time.</summary>
internal sealed class DesignTimePostgres : IDesignTimeDbContextFactory<PostgresContext>
{
    public PostgresContext CreateDbContext(string[] args) => (PostgresContext)PostgresRecords.Of("Host=design-time;Database=coldwalk").NewContext();
}
