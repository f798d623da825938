using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Assistant.Records.Storage.Postgres;

/// <summary>PostgreSQL's error codes in words for people (codes: postgresql.org/docs, appendix A).</summary>
internal static class PostgresFaults
{
    public static bool IsAlreadyThere(Exception failure) => Code(failure) == PostgresErrorCodes.UniqueViolation;

    public static bool IsLostRace(Exception failure) => failure is DbUpdateConcurrencyException
        || Code(failure) is PostgresErrorCodes.UniqueViolation or PostgresErrorCodes.SerializationFailure or PostgresErrorCodes.DeadlockDetected;

    /// <summary>The failure as one line, or null where PostgreSQL did not cause it.</summary>
    /// <param name="where">The database, for people.</param>
    public static RecordsException? Explain(Exception failure, string where)
    {
        if (failure is RecordsException known)
        {
            return known;
        }

        if (failure is DbUpdateConcurrencyException)
        {
            return new(RecordsFault.Contended, "Others wrote to the same place at the same time. Nothing was stored; say it again.", failure);
        }

        return Cause(failure) switch
        {
            null => null,
            PostgresException said => Explain(said, failure, where),
            _ => Gone(failure, where),
        };
    }

    private static RecordsException Explain(PostgresException said, Exception failure, string where) => said.SqlState switch
    {
        // Class 08 is a broken connection, 57P a server that starts, stops or was killed, 53300 one that takes no more of them.
        ['0', '8', ..] or ['5', '7', 'P', ..] or "53300" => Gone(failure, where),
        "53100" => new(RecordsFault.DiskFull, $"The disk that holds {where} is full. Nothing was stored; free some space and say it again.", failure),
        "25006" or "42501" => new(RecordsFault.ReadOnly, $"{Upper(where)} may not be written. Nothing was stored; give this program's user the right to write it.", failure),
        ['2', '8', ..] => new(RecordsFault.Unreadable, $"{Upper(where)} does not let this program's user in ({said.MessageText}). Check the user and the password.", failure),
        "3D000" => new(RecordsFault.Unreadable, $"There is no such database: {where}. Create it first (createdb).", failure),
        ['2', '2', ..] => new(RecordsFault.Refused, "It holds a character that can not be stored. Nothing was stored; leave it out.", failure),
        "40001" or "40P01" or "55P03" => new(RecordsFault.Contended, "Others wrote to the same place at the same time. Nothing was stored; say it again.", failure),
        _ => new(RecordsFault.Unreadable, $"{Upper(where)} can not be used (PostgreSQL code {said.SqlState}). Nothing was stored.", failure),
    };

    // A line that breaks during a commit leaves open whether it was made. A message's id keeps it from being taken twice.
    private static RecordsException Gone(Exception failure, string where) => new(
        RecordsFault.Unreachable, $"{Upper(where)} does not answer just now. Say it again in a moment: what was stored is kept, and nothing is taken twice.", failure);

    private static string Upper(string where) => $"{char.ToUpperInvariant(where[0])}{where[1..]}";

    private static string? Code(Exception failure) => (Cause(failure) as PostgresException)?.SqlState;

    private static NpgsqlException? Cause(Exception? failure) => failure switch
    {
        null => null,
        PostgresException said => said,
        NpgsqlException broken => Cause(broken.InnerException) ?? broken,
        _ => Cause(failure.InnerException),
    };
}
