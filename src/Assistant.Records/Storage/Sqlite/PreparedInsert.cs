using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>A row put into its table as the model has it, column by column, without being tracked.</summary>
internal sealed class PreparedInsert<TRow> : IDisposable
    where TRow : class
{
    private readonly Func<TRow, object?>[] columns;
    private readonly object?[] values;
    private readonly PreparedStatement statement;

    public PreparedInsert(RecordsContext context, SqliteConnection connection)
    {
        var table = context.Model.FindEntityType(typeof(TRow))!;
        var properties = table.GetProperties().ToList();
        columns = [.. properties.Select(ValueOf)];
        values = new object?[columns.Length];
        statement = new(
            connection,
            $"INSERT INTO {table.GetTableName()} ({string.Join(", ", properties.Select(p => p.GetColumnName()))}) VALUES ({string.Join(", ", properties.Select(_ => "?"))})");
    }

    public void Run(TRow row)
    {
        for (var i = 0; i < columns.Length; i++)
        {
            values[i] = columns[i](row);
        }

        statement.Run(values);
    }

    public void Dispose() => statement.Dispose();

    private static Func<TRow, object?> ValueOf(IProperty property)
    {
        var (getter, converter) = (property.GetGetter(), property.GetTypeMapping().Converter);
        return converter is null ? getter.GetClrValue : row => converter.ConvertToProvider(getter.GetClrValue(row));
    }
}
