using Microsoft.Data.Sqlite;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>
/// Copies what was committed from the write-ahead log into the tables, beside the writer and not in its turn: all who wait for a commit
/// would wait for that too. The writer's own copying (<see cref="SqlitePragmas"/>) then finds little left to do, and keeps the log bounded.
/// </summary>
internal sealed class Checkpoints(string connectionString)
{
    /// <summary>A commit is a few pages for one turn and some hundred for a full batch of them.</summary>
    private const int Commits = 32;

    private int since;
    private int isUnderWay;

    /// <summary>A commit was made.</summary>
    public void Committed()
    {
        if (Interlocked.Increment(ref since) >= Commits && Interlocked.Exchange(ref isUnderWay, 1) == 0)
        {
            Volatile.Write(ref since, 0);
            _ = Task.Run(Copy);
        }
    }

    private void Copy()
    {
        try
        {
            using var connection = new SqliteConnection(connectionString);
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA wal_checkpoint(PASSIVE)";
            command.ExecuteNonQuery();
        }
        catch (SqliteException)
        {
            // Nothing is lost: it stands in the write-ahead log. Whatever is wrong with the file, the next commit finds and tells.
        }
        finally
        {
            Volatile.Write(ref isUnderWay, 0);
        }
    }
}
