using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Rooms;
using Assistant.Records.Storage;

namespace Assistant.Channels.Rooms;

/// <summary>Keeps one post in each room that says how the visit stands, changed in place as the visit goes on.</summary>
internal sealed class RoomSummaries(IRecordsDatabase database, RoomSummary summary, IRoomPoster poster)
{
    public async Task KeepAsync(Room room, ImmutableArray<VisitEvent> events, CancellationToken cancellation)
    {
        await using var held = await HeldRoom.TakeAsync(database, room.Channel, room.Conversation, cancellation);
        var text = summary.Of(VisitState.Fold(events));
        var digest = RoomSummary.DigestOf(text);
        if (held is null || held.Room.VisitId != room.VisitId || held.Room.SummaryDigest == digest)
        {
            return;
        }

        if (await poster.PutAsync(held.Room, text, cancellation) is { } id)
        {
            await held.SummedUpAsync(id, digest, cancellation);
        }
    }
}
