namespace Assistant.Records.Storage.Rows;

/// <summary>Which visit a channel's conversation is on now.</summary>
public sealed class ConversationRow
{
    public required string Channel { get; init; }

    public required string Conversation { get; init; }

    public required string VisitId { get; set; }
}
