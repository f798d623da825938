namespace Assistant.Records.Rooms;

/// <summary>A conversation that is told what its visit hears elsewhere.</summary>
/// <param name="Reference">What the channel needs to write there unasked, as JSON, or null where the name is enough.</param>
/// <param name="IsGroup">True where several people read it.</param>
/// <param name="CanEdit">True where a post can be changed in place.</param>
public sealed record Room(string Channel, string Conversation, string? Reference, bool IsGroup, bool CanEdit)
{
    /// <summary>The visit it is told of, or null.</summary>
    public string? VisitId { get; init; }

    /// <summary>The number of the visit's event up to which it has been told.</summary>
    public int Told { get; init; }

    /// <summary>The post that holds the visit's summary, or null.</summary>
    public string? SummaryId { get; init; }

    /// <summary>The digest of what that post says.</summary>
    public string? SummaryDigest { get; init; }

    /// <summary>True where a message of that id was said in this room: a channel whose ids are a conversation's own puts its name before them.</summary>
    public bool Holds(string channel, string messageId)
    {
        ArgumentNullException.ThrowIfNull(messageId);
        return channel == Channel && messageId.Length > Conversation.Length && messageId[Conversation.Length] == ' ' && messageId.StartsWith(Conversation, StringComparison.Ordinal);
    }
}

/// <summary>Up to where a room was listened to.</summary>
/// <param name="From">From when on it is listened to.</param>
/// <param name="To">When the last of what was heard was said.</param>
/// <param name="Heard">What was heard last, as JSON.</param>
public sealed record RoomPlace(DateTimeOffset From, DateTimeOffset To, string Heard);
