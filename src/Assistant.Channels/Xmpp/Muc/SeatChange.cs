namespace Assistant.Channels.Xmpp.Muc;

/// <summary>What a presence changed of our own seat in a room.</summary>
internal abstract record SeatChange;

/// <summary>Nothing.</summary>
internal sealed record NoChange : SeatChange;

/// <summary>We are in.</summary>
/// <param name="IsNew">True where the room was made by our entering and waits to be set up.</param>
internal sealed record Entered(bool IsNew) : SeatChange;

/// <summary>Somebody else has the nick.</summary>
internal sealed record NickTaken : SeatChange;

/// <summary>We are not let in.</summary>
/// <param name="Trouble">Why, and what would help.</param>
internal sealed record NotLetIn(string Trouble) : SeatChange;

/// <summary>We were in and are no longer.</summary>
/// <param name="MayReturn">True where entering again is in order: the room or the line had trouble, or a short while has passed after a kick.</param>
internal sealed record PutOut(string Trouble, bool MayReturn) : SeatChange;
