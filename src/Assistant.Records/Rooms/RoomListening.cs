using System.Collections.Immutable;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Rooms;

/// <summary>Keeps up to where each room of a channel was listened to, for a channel that must ask a room for what it missed.</summary>
public sealed class RoomListening(IRecordsDatabase database, string channel)
{
    /// <summary>The rooms that are listened to.</summary>
    public Task<ImmutableDictionary<string, RoomPlace>> ReadAsync(CancellationToken cancellation = default) => database.UseAsync(async context =>
        (await context.Rooms.AsNoTracking().Where(r => r.Channel == channel && r.ListenedFrom != null).ToListAsync(cancellation))
        .ToImmutableDictionary(r => r.Conversation, r => new RoomPlace(r.ListenedFrom!.Value, r.ListenedTo ?? r.ListenedFrom.Value, r.Heard ?? "[]"), StringComparer.Ordinal));

    /// <summary>The room is listened to up to there; it is on the disk when this returns.</summary>
    public async Task WriteAsync(string conversation, RoomPlace place, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(place);
        if (await UpdateAsync(conversation, place, cancellation) == 0)
        {
            await new RoomStore(database).SaveAsync(new(channel, conversation, null, IsGroup: true, CanEdit: false), cancellation);
            await UpdateAsync(conversation, place, cancellation);
        }
    }

    private Task<int> UpdateAsync(string conversation, RoomPlace place, CancellationToken cancellation) => database.WriteAsync(context =>
        context.Rooms.Where(r => r.Channel == channel && r.Conversation == conversation).ExecuteUpdateAsync(
            set => set.SetProperty(r => r.ListenedFrom, place.From).SetProperty(r => r.ListenedTo, place.To).SetProperty(r => r.Heard, place.Heard), cancellation), cancellation);
}
