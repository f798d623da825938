using Assistant.Records.Rooms;

namespace Assistant.Channels.Rooms;

/// <summary>Posts where a post can be changed afterwards.</summary>
internal interface IRoomPoster
{
    /// <summary>Puts the words into the room's summary post, or posts them where there is none or it is gone.</summary>
    /// <returns>The post's id, or null where they did not get there.</returns>
    Task<string?> PutAsync(Room room, string text, CancellationToken cancellation);
}
