using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>
/// One statement of a connection, parsed once and run with other values each time. It speaks to SQLite itself: the commands of ADO.NET look
/// their parameters up by name and make a reader each time, which costs more than a row of the log.
/// </summary>
internal sealed class PreparedStatement : IDisposable
{
    private readonly sqlite3 database;
    private readonly sqlite3_stmt statement;

    /// <param name="connection">An open one, which stays open as long as the statement is used.</param>
    /// <param name="sql">Its values stand as ?.</param>
    /// <exception cref="SqliteException">It can not be parsed.</exception>
    public PreparedStatement(SqliteConnection connection, string sql)
    {
        database = connection.Handle!;
        SqliteException.ThrowExceptionForRC(raw.sqlite3_prepare_v3(database, sql, raw.SQLITE_PREPARE_PERSISTENT, out statement), database);
    }

    /// <exception cref="SqliteException">It failed; the transaction is as SQLite leaves it.</exception>
    public void Run(params ReadOnlySpan<object?> values)
    {
        Bind(values);
        try
        {
            while (Step())
            {
            }
        }
        finally
        {
            raw.sqlite3_reset(statement);
        }
    }

    /// <summary>What is read of the first row found, or null where there is none.</summary>
    /// <exception cref="SqliteException">It failed.</exception>
    public TResult? First<TResult>(Func<StatementRow, TResult> read, params ReadOnlySpan<object?> values)
        where TResult : class
    {
        Bind(values);
        try
        {
            return Step() ? read(new(statement)) : null;
        }
        finally
        {
            raw.sqlite3_reset(statement);
        }
    }

    /// <summary>What is read of every row found.</summary>
    /// <exception cref="SqliteException">It failed.</exception>
    public List<TResult> All<TResult>(Func<StatementRow, TResult> read, params ReadOnlySpan<object?> values)
    {
        Bind(values);
        try
        {
            List<TResult> all = [];
            while (Step())
            {
                all.Add(read(new(statement)));
            }

            return all;
        }
        finally
        {
            raw.sqlite3_reset(statement);
        }
    }

    public void Dispose() => statement.Dispose();

    private bool Step()
    {
        var result = raw.sqlite3_step(statement);
        if (result is not (raw.SQLITE_ROW or raw.SQLITE_DONE))
        {
            SqliteException.ThrowExceptionForRC(result, database);
        }

        return result == raw.SQLITE_ROW;
    }

    private void Bind(ReadOnlySpan<object?> values)
    {
        for (var i = 0; i < values.Length; i++)
        {
            var result = values[i] switch
            {
                null => raw.sqlite3_bind_null(statement, i + 1),
                string text => raw.sqlite3_bind_text(statement, i + 1, text),
                int number => raw.sqlite3_bind_int(statement, i + 1, number),
                byte[] bytes => raw.sqlite3_bind_blob(statement, i + 1, bytes),
                var other => throw new ArgumentException($"A column takes no {other.GetType().Name}.", nameof(values)),
            };
            SqliteException.ThrowExceptionForRC(result, database);
        }
    }
}

/// <summary>The row a statement stands at; it is gone with the next step.</summary>
internal readonly struct StatementRow(sqlite3_stmt statement)
{
    public string Text(int column) => raw.sqlite3_column_text(statement, column).utf8_to_string();

    public string? TextOrNull(int column) => raw.sqlite3_column_type(statement, column) == raw.SQLITE_NULL ? null : Text(column);

    public int Number(int column) => raw.sqlite3_column_int(statement, column);

    public byte[] Bytes(int column) => raw.sqlite3_column_blob(statement, column).ToArray();
}
