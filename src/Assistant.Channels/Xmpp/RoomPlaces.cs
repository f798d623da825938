using System.Collections.Immutable;
using System.Text.Json;
using Assistant.Records.Rooms;

namespace Assistant.Channels.Xmpp;

/// <summary>
/// Up to where each room was listened to: after a lost line or a restart what was said from there on is asked for, and what is known of
/// it is left out. Kept with the records, so that another program that takes the line over knows it too.
/// </summary>
/// <param name="old">The file in which it stood before; what it holds of rooms not on record is taken over. Null where there is none.</param>
internal sealed class RoomPlaces(RoomListening listening, string? old = null)
{
    /// <summary>The room's clock and ours may differ by so much.</summary>
    private static readonly TimeSpan Skew = TimeSpan.FromMinutes(2);

    /// <summary>How long the ids of what was said are kept.</summary>
    private static readonly TimeSpan Kept = TimeSpan.FromMinutes(10);

    private const int MostKept = 2000;

    private ImmutableDictionary<string, Place> places = ImmutableDictionary.Create<string, Place>(StringComparer.Ordinal);

    /// <summary>Reads anew what is on record: another program may have had the line meanwhile.</summary>
    public async Task ReadAsync(CancellationToken cancellation)
    {
        var read = (await listening.ReadAsync(cancellation)).ToImmutableDictionary(p => p.Key, p => Of(p.Value), StringComparer.Ordinal);
        foreach (var (room, place) in ReadOld().Where(p => !read.ContainsKey(p.Key)))
        {
            await listening.WriteAsync(room, Of(place), cancellation);
            read = read.Add(room, place);
        }

        places = read;
    }

    /// <summary>From when on what was said is wanted, or null where the room is new to us.</summary>
    public DateTimeOffset? Since(Jid room) => places.TryGetValue(room.ToString(), out var place) ? place.At - Skew : null;

    /// <summary>True for what was dealt with before, or said before we came.</summary>
    public bool Knows(RoomWords words) =>
        places.TryGetValue(words.Room.ToString(), out var place) && (words.At < place.From || place.Ids.Any(i => i.Id == words.Id));

    /// <summary>The room is listened to from that time on.</summary>
    public async Task BeginAsync(Jid room, DateTimeOffset at, CancellationToken cancellation)
    {
        if (!places.ContainsKey(room.ToString()))
        {
            await KeepAsync(room.ToString(), new(at, at, []), cancellation);
        }
    }

    /// <summary>What was said is dealt with. On the disk when this returns.</summary>
    public Task PassAsync(RoomWords words, CancellationToken cancellation)
    {
        var place = places.GetValueOrDefault(words.Room.ToString()) ?? new(words.At, words.At, []);
        var at = words.At > place.At ? words.At : place.At;
        var ids = place.Ids.Where(i => i.At > at - Kept).Append(new(words.Id, words.At)).TakeLast(MostKept);
        return KeepAsync(words.Room.ToString(), place with { At = at, Ids = [.. ids] }, cancellation);
    }

    private Task KeepAsync(string room, Place place, CancellationToken cancellation)
    {
        places = places.SetItem(room, place);
        return listening.WriteAsync(room, Of(place), cancellation);
    }

    private Dictionary<string, Place> ReadOld()
    {
        try
        {
            return old is null ? [] : JsonSerializer.Deserialize<Dictionary<string, Place>>(File.ReadAllBytes(old)) ?? [];
        }
        catch (Exception none) when (none is FileNotFoundException or DirectoryNotFoundException or JsonException)
        {
            return [];
        }
    }

    private static RoomPlace Of(Place place) => new(place.From, place.At, JsonSerializer.Serialize(place.Ids));

    private static Place Of(RoomPlace place) => new(place.From, place.To, JsonSerializer.Deserialize<ImmutableArray<Heard>>(place.Heard));

    private sealed record Place(DateTimeOffset From, DateTimeOffset At, ImmutableArray<Heard> Ids);

    private sealed record Heard(string Id, DateTimeOffset At);
}
