using System.Collections.Immutable;
using System.Text.Json;

namespace Assistant.Channels.Xmpp;

/// <summary>
/// Up to where each room was listened to: after a lost line or a restart what was said from there on is asked for, and what is known of
/// it is left out. Kept in one small file; without it a room is listened to from now on.
/// </summary>
internal sealed class RoomPlaces
{
    /// <summary>The room's clock and ours may differ by so much.</summary>
    private static readonly TimeSpan Skew = TimeSpan.FromMinutes(2);

    /// <summary>How long the ids of what was said are kept.</summary>
    private static readonly TimeSpan Kept = TimeSpan.FromMinutes(10);

    private const int MostKept = 2000;

    private readonly string file;
    private readonly Dictionary<string, Place> places;

    /// <exception cref="IOException">The file can not be read.</exception>
    public RoomPlaces(string file)
    {
        this.file = file;
        places = Read(file);
    }

    /// <summary>From when on what was said is wanted, or null where the room is new to us.</summary>
    public DateTimeOffset? Since(Jid room) => places.TryGetValue(room.ToString(), out var place) ? place.At - Skew : null;

    /// <summary>True for what was dealt with before, or said before we came.</summary>
    public bool Knows(RoomWords words) =>
        places.TryGetValue(words.Room.ToString(), out var place) && (words.At < place.From || place.Ids.Any(i => i.Id == words.Id));

    /// <summary>The room is listened to from that time on.</summary>
    public void Begin(Jid room, DateTimeOffset at)
    {
        if (places.TryAdd(room.ToString(), new(at, at, [])))
        {
            Write();
        }
    }

    /// <summary>What was said is dealt with. On the disk when this returns.</summary>
    public void Pass(RoomWords words)
    {
        var place = places.GetValueOrDefault(words.Room.ToString()) ?? new(words.At, words.At, []);
        var at = words.At > place.At ? words.At : place.At;
        var ids = place.Ids.Where(i => i.At > at - Kept).Append(new(words.Id, words.At)).TakeLast(MostKept);
        places[words.Room.ToString()] = place with { At = at, Ids = [.. ids] };
        Write();
    }

    private static Dictionary<string, Place> Read(string file)
    {
        try
        {
            return JsonSerializer.Deserialize<Dictionary<string, Place>>(File.ReadAllBytes(file)) ?? [];
        }
        catch (Exception none) when (none is FileNotFoundException or DirectoryNotFoundException or JsonException)
        {
            return [];
        }
    }

    // Written beside and put in its place: a power cut leaves the old one or the new one.
    private void Write()
    {
        var beside = file + ".new";
        using (var stream = new FileStream(beside, FileMode.Create, FileAccess.Write))
        {
            JsonSerializer.Serialize(stream, places);
            stream.Flush(flushToDisk: true);
        }

        File.Move(beside, file, overwrite: true);
    }

    private sealed record Place(DateTimeOffset From, DateTimeOffset At, ImmutableArray<Heard> Ids);

    private sealed record Heard(string Id, DateTimeOffset At);
}
