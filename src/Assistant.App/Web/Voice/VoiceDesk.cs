using Assistant.App.Hosting;
using Assistant.Voice;

namespace Assistant.App.Web.Voice;

/// <summary>The talks by voice on the page, one a phone and visit. Made when first wanted; the longest unused makes room for a new one.</summary>
internal sealed class VoiceDesk(CallRoom room, TimeProvider clock) : IDisposable
{
    private const int MostTalks = 50;

    private readonly Lock guard = new();
    private readonly Dictionary<TalkKey, PageTalk> talks = [];
    private readonly VoiceHost host = new(room);

    /// <summary>The talk on a visit, begun where it is not yet.</summary>
    /// <exception cref="VoicePartMissingException">A part of hearing is not installed.</exception>
    public async Task<PageTalk> TalkAsync(TalkKey key, CancellationToken cancellation)
    {
        var visit = await room.VisitAsync(key.Visit, cancellation);
        var units = (await room.Conversations.StateOfAsync(visit, cancellation)).Units;
        var voice = host.Open();
        lock (guard)
        {
            if (!talks.TryGetValue(key, out var talk))
            {
                if (talks.Count >= MostTalks)
                {
                    talks.Remove(talks.MinBy(t => t.Value.Used).Key);
                }

                talk = talks[key] = new(voice.Talk(new VoiceVisit(room, VisitEndpoints.Channel, key.Visit, key.Person, clock, units)));
            }

            talk.Used = clock.GetUtcNow();
            return talk;
        }
    }

    public void Dispose()
    {
        foreach (var talk in talks.Values)
        {
            talk.Dispose();
        }

        host.Dispose();
    }
}

/// <summary>Whose talk it is: two on one visit each have their own, and nobody takes over another's.</summary>
/// <param name="Talk">Made by the page when voice is opened on it.</param>
internal sealed record TalkKey(string Visit, string Talk, string Person);
