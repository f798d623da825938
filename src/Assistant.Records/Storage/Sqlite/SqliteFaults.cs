using Microsoft.Data.Sqlite;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>SQLite's result codes in words for people (codes: sqlite.org/rescode.html).</summary>
internal static class SqliteFaults
{
    private const int UniqueViolation = 2067;
    private const int PrimaryKeyViolation = 1555;

    public static bool IsAlreadyThere(Exception failure) =>
        Cause(failure) is { SqliteExtendedErrorCode: UniqueViolation or PrimaryKeyViolation };

    /// <summary>The failure as one line, or null where SQLite did not cause it.</summary>
    public static RecordsException? Explain(Exception failure, string path)
    {
        if (failure is RecordsException known)
        {
            return known;
        }

        return Cause(failure) is not { } cause ? null : cause.SqliteErrorCode switch
        {
            5 or 6 => new(RecordsFault.Locked, $"The records in {path} are held by another program. Nothing was stored; try again, or close the other program.", failure),
            13 => new(RecordsFault.DiskFull, $"The disk that holds {path} is full. Nothing was stored; free some space and say it again.", failure),
            8 => new(RecordsFault.ReadOnly, $"The records in {path} may not be written. Nothing was stored; give this program the right to write the file and its folder.", failure),
            14 => new(RecordsFault.Unreadable, $"The records in {path} can not be opened. The folder must exist and be readable and writable.", failure),
            26 => new(RecordsFault.Foreign, $"{path} is not a record file of Coldwalk. Name another file, or move this one away.", failure),
            11 => new(RecordsFault.Unreadable, $"The records in {path} are damaged. Nothing was stored; go back to the last copy of the file.", failure),
            10 => new(RecordsFault.Unreadable, $"The disk failed while the records in {path} were read or written. Nothing was stored; check the disk.", failure),
            _ => new(RecordsFault.Unreadable, $"The records in {path} can not be used (SQLite code {cause.SqliteErrorCode}). Nothing was stored.", failure),
        };
    }

    private static SqliteException? Cause(Exception? failure) => failure as SqliteException ?? (failure is null ? null : Cause(failure.InnerException));
}
