namespace Assistant.Records.Storage;

/// <summary>The records could not be read or written. Nothing was stored in part; the message is one line for people.</summary>
public sealed class RecordsException(RecordsFault fault, string message, Exception? inner = null) : Exception(message, inner)
{
    public RecordsFault Fault { get; } = fault;
}
