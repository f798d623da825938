using Microsoft.EntityFrameworkCore.Design;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>Lets the migration tool see the model; never used at run time.</summary>
internal sealed class DesignTimeRecords : IDesignTimeDbContextFactory<RecordsContext>
{
    public RecordsContext CreateDbContext(string[] args) => new SqliteRecords("design-time.db").NewContext();
}
