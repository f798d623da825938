namespace Assistant.Channels.Xmpp;

/// <summary>Something that was said in a room.</summary>
/// <param name="Id">The room's own id of it, or one made from sender and message: the same words brought again have the same.</param>
/// <param name="Nick">What the speaker was called.</param>
/// <param name="Account">The speaker's account, or null where the room hides it.</param>
/// <param name="At">When it was said.</param>
/// <param name="Text">The words, without our name before them.</param>
/// <param name="IsToUs">True where our name stood before them.</param>
/// <param name="IsCorrection">True where they stand for the speaker's words before (XEP-0308).</param>
public sealed record RoomWords(string Id, Jid Room, string Nick, Jid? Account, DateTimeOffset At, string Text, bool IsToUs, bool IsCorrection);

/// <summary>Something that was written to us directly.</summary>
/// <param name="Account">Who wrote.</param>
public sealed record DirectWords(string Id, Jid Account, DateTimeOffset At, string Text);
