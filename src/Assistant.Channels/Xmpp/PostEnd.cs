namespace Assistant.Channels.Xmpp;

/// <summary>What became of words that were posted.</summary>
internal enum PostEnd
{
    /// <summary>They are there.</summary>
    There,

    /// <summary>They are not: there is no line, or we are not in the room.</summary>
    NotThere,

    /// <summary>The room does not take them.</summary>
    Refused,

    /// <summary>Nobody knows: the line broke before the answer.</summary>
    Unknown,
}
