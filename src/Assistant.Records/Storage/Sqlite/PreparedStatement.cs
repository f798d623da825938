using Microsoft.Data.Sqlite;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>One statement of a connection, parsed once and run with other values each time.</summary>
internal sealed class PreparedStatement : IDisposable
{
    private readonly SqliteCommand command;

    /// <param name="sql">Its values stand as @0, @1 and so on.</param>
    public PreparedStatement(SqliteConnection connection, SqliteTransaction? transaction, string sql, int values)
    {
        command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = sql;
        for (var i = 0; i < values; i++)
        {
            command.Parameters.Add(new() { ParameterName = $"@{i}" });
        }
    }

    public void Run(params ReadOnlySpan<object?> values) => Bound(values).ExecuteNonQuery();

    /// <summary>What is read of the first row found, or null where there is none.</summary>
    public TResult? First<TResult>(Func<SqliteDataReader, TResult> read, params ReadOnlySpan<object?> values)
        where TResult : class
    {
        using var reader = Bound(values).ExecuteReader();
        return reader.Read() ? read(reader) : null;
    }

    public void Dispose() => command.Dispose();

    private SqliteCommand Bound(ReadOnlySpan<object?> values)
    {
        for (var i = 0; i < values.Length; i++)
        {
            command.Parameters[i].Value = values[i] ?? DBNull.Value;
        }

        return command;
    }
}
