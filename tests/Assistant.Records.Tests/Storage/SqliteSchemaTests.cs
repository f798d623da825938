using Assistant.Records.Storage.Sqlite;
using Assistant.Records.Tests.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Migrations;

namespace Assistant.Records.Tests.Storage;

/// <summary>
/// What a start reads instead of working it out. After a change of a table both are made again, in src/Assistant.Records:
/// <c>COLDWALK_DRAW=1 dotnet test --filter SqliteSchema</c> writes the script, and
/// <c>dotnet-ef dbcontext optimize --context RecordsContext --output-dir Storage/Sqlite/Model --namespace Assistant.Records.Storage.Sqlite.Model</c> the model.
/// </summary>
public sealed class SqliteSchemaTests
{
    [Fact]
    public void The_script_of_a_new_file_is_what_the_migrations_make_of_it()
    {
        using var context = new SqliteRecords("never-made.db").NewContext();
        var made = "-- Made from the migrations, see SqliteSchemaTests.\n" + context.GetService<IMigrator>().GenerateScript(options: MigrationsSqlGenerationOptions.NoTransactions).ReplaceLineEndings("\n");
        var file = Repository.PathOf("src", "Assistant.Records", "Migrations", "sqlite.sql");
        if (Environment.GetEnvironmentVariable("COLDWALK_DRAW") is not null)
        {
            File.WriteAllText(file, made);
        }

        Assert.Equal(made, File.ReadAllText(file));
    }

    [Fact]
    public void The_release_knows_its_migrations_by_the_script()
    {
        using var context = new SqliteRecords("never-made.db").NewContext();

        Assert.Equal(context.Database.GetMigrations(), SqliteSchema.Migrations);
    }

    [Fact]
    public void The_model_made_ahead_is_the_model_of_the_code()
    {
        using var ahead = new SqliteRecords("never-made.db").NewContext();
        using var designed = new SqliteRecords("never-made.db").NewContext();

        Assert.Equal(Shape(designed.GetService<IDesignTimeModel>().Model), Shape(ahead.Model));
    }

    private static string Shape(IModel model) => string.Join('\n', model.GetEntityTypes().OrderBy(e => e.Name, StringComparer.Ordinal).SelectMany(Lines));

    private static IEnumerable<string> Lines(IEntityType entity) =>
    [
        $"{entity.Name} {entity.GetTableName()}",
        .. entity.GetProperties().Select(p => $"  {p.Name} {p.ClrType} {p.GetColumnName()} {p.GetColumnType()} null={p.IsNullable} token={p.IsConcurrencyToken} made={p.ValueGenerated}").Order(StringComparer.Ordinal),
        .. entity.GetKeys().Select(k => $"  key {string.Join(',', k.Properties.Select(p => p.Name))}").Order(StringComparer.Ordinal),
        .. entity.GetForeignKeys().Select(k => $"  to {k.PrincipalEntityType.Name} {string.Join(',', k.Properties.Select(p => p.Name))} {k.DeleteBehavior}").Order(StringComparer.Ordinal),
        .. entity.GetIndexes().Select(i => $"  index {string.Join(',', i.Properties.Select(p => p.Name))} {i.IsUnique}").Order(StringComparer.Ordinal),
    ];
}
