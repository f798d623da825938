using Assistant.Records.Storage;

namespace Assistant.Records.Rooms;

/// <summary>Keeps a room on the visit its conversation is on.</summary>
internal static class RoomBinding
{
    /// <param name="told">Up to where the room knows the visit.</param>
    public static async Task BindAsync(RecordsContext context, string channel, string conversation, string visitId, int told)
    {
        if (await context.Rooms.FindAsync(channel, conversation) is { } room && room.VisitId != visitId)
        {
            (room.VisitId, room.Told, room.SummaryId, room.SummaryDigest) = (visitId, told, null, null);
        }
    }
}
