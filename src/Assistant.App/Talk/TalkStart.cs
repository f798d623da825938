using Assistant.App.Demo;
using Assistant.App.Hosting;
using Assistant.Records.Conversations;
using Assistant.Trade.Quantities;

namespace Assistant.App.Talk;

/// <summary>How a talk in the terminal begins.</summary>
/// <param name="Site">Where the room is; null leaves it to the talk.</param>
/// <param name="New">True opens a new visit even where one is under way.</param>
/// <param name="Demo">The invented call, or null for a real one.</param>
internal sealed record TalkStart(string? Site, UnitSystem Units, bool New, DemoVisit? Demo)
{
    /// <summary>True where a visit is to be opened before anything is said.</summary>
    public bool AsksForNewVisit => New || Site is not null || Demo is not null;

    public async Task<OpenedVisit> OpenAsync(CallRoom room, string channel, string conversation, string person, DateTimeOffset at, CancellationToken cancellation)
    {
        if (Demo is not null)
        {
            await room.Assets.RecordAsync(Demo.Asset, at, cancellation);
        }

        return await room.Conversations.OpenVisitAsync(
            new(channel, conversation, Demo is null ? Site : null, Demo?.Id, Demo?.Units ?? Units, person, at), cancellation);
    }
}
