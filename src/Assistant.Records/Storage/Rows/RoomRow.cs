namespace Assistant.Records.Storage.Rows;

/// <summary>A conversation that is told what its visit hears elsewhere: a room of a chat server, a team's thread, a person's chat with the bot.</summary>
public sealed class RoomRow
{
    public required string Channel { get; init; }

    /// <summary>The channel's own name for it, as in <see cref="ConversationRow"/>.</summary>
    public required string Conversation { get; init; }

    /// <summary>What the channel needs to write there unasked, as JSON, or null where the name is enough. Nobody's name is in it.</summary>
    public string? Reference { get; set; }

    /// <summary>True where several people read it.</summary>
    public bool IsGroup { get; set; }

    /// <summary>True where a post can be changed in place.</summary>
    public bool CanEdit { get; set; }

    /// <summary>The visit it is told of, or null.</summary>
    public string? VisitId { get; set; }

    /// <summary>The number of the visit's event up to which it has been told, or needed no telling.</summary>
    public int Told { get; set; }

    /// <summary>The channel's id of the post that holds the visit's summary, or null.</summary>
    public string? SummaryId { get; set; }

    /// <summary>The digest of what that post says: it is not changed to what it says already.</summary>
    public string? SummaryDigest { get; set; }

    /// <summary>From when on the room is listened to, or null where the channel brings each message itself.</summary>
    public DateTimeOffset? ListenedFrom { get; set; }

    /// <summary>Up to when it was listened to.</summary>
    public DateTimeOffset? ListenedTo { get; set; }

    /// <summary>The ids of what was heard last there, as JSON.</summary>
    public string? Heard { get; set; }
}
