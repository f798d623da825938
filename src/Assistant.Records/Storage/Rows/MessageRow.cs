namespace Assistant.Records.Storage.Rows;

/// <summary>A message that was applied, with the reply it got: the same id again is answered from here.</summary>
public sealed class MessageRow
{
    public required string Channel { get; init; }

    public required string MessageId { get; init; }

    public required string VisitId { get; init; }

    /// <summary>The visit's version once the message was applied.</summary>
    public required int Version { get; init; }

    /// <summary>The reply as JSON.</summary>
    public required string Reply { get; set; }
}
