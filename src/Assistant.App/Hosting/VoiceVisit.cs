using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;

namespace Assistant.App.Hosting;

/// <summary>The same visit as in chat, spoken on: what is confirmed by voice is said on its conversation as a typed line would be.</summary>
internal sealed class VoiceVisit(CallRoom room, string channel, string conversation, string person, TimeProvider clock, UnitSystem units) : IVoiceVisit
{
    public UnitSystem Units => units;

    public async Task<Reply> NowAsync(CancellationToken cancellation) => room.Now(await room.Conversations.StateOfAsync(await VisitAsync(cancellation), cancellation));

    public async Task<Reply> WithCautionsAsync(Reply now, CancellationToken cancellation)
    {
        var codes = StandingCautions.NotGivenTo(person, await room.Log.ReadAsync(await VisitAsync(cancellation), cancellation));
        return now with { Cautions = [.. codes.Select(c => new SpokenCaution(c, room.Dialogue.Phrases.Say("caution." + c, units)))] };
    }

    public Task<Reply> SayAsync(string text, CancellationToken cancellation) =>
        room.HandleAsync(new(Guid.NewGuid().ToString("N"), channel, conversation, person, clock.GetUtcNow(), text), cancellation);

    private async Task<string> VisitAsync(CancellationToken cancellation) =>
        await room.Log.VisitOfAsync(channel, conversation, cancellation) ?? throw new InvalidOperationException("Voice joins a visit that is open already.");
}
