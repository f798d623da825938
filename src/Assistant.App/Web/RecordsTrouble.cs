using Assistant.Records.Storage;

namespace Assistant.App.Web;

/// <summary>
/// What a client of the page is told where the records fail: what happened and what to do, but not which file, disk or host it is. That
/// is in the exception's own message, for the console.
/// </summary>
internal static class RecordsTrouble
{
    public static string Line(RecordsException failure) => failure.Fault switch
    {
        // These say nothing of where the records lie.
        RecordsFault.Refused or RecordsFault.Contended => failure.Message,
        RecordsFault.Locked => "The records are held by another program. Nothing was stored; say it again in a moment.",
        RecordsFault.DiskFull => "The disk of the records is full. Nothing was stored; say it again when the operator has made room.",
        RecordsFault.ReadOnly => "The records may not be written. Nothing was stored; say it again when the operator has put it right.",
        RecordsFault.Unreachable => "The records' database does not answer just now. Say it again in a moment: what was stored is kept, and nothing is taken twice.",
        _ => "The records can not be used. Nothing was stored; the operator finds the reason on the program's console.",
    };
}
