using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;

namespace Assistant.Voice.Scoring.Kit;

/// <summary>A visit in memory, through the dialogue itself and without records.</summary>
public sealed class EngineVisit : IVoiceVisit
{
    private static readonly DateTimeOffset Start = new(2026, 7, 14, 8, 0, 0, TimeSpan.Zero);

    private readonly ITurnEngine engine;
    private int said;

    public EngineVisit(ITurnEngine engine, UnitSystem units, params IEnumerable<(string Fact, string Text)> known)
    {
        this.engine = engine;
        var record = known.ToImmutableDictionary(k => k.Fact, k => k.Text);
        var opening = engine.Open(new VisitOpened("Invented Creamery", null, units.ToString().ToLowerInvariant(), record) { At = Start, By = "technician" });
        (State, Opening) = (opening.After, opening.Reply);
    }

    public Reply Opening { get; }

    public VisitState State { get; private set; }

    public UnitSystem Units => State.Units;

    /// <summary>What was known at the end, as text by fact.</summary>
    public SortedDictionary<string, string> Facts => new(State.Facts.Values.ToDictionary(v => v.Fact.Name, v => v is Trade.Facts.Reading r
        ? string.Create(CultureInfo.InvariantCulture, $"{r.Value} {r.Unit.Symbol}")
        : ((Trade.Facts.Observation)v).Value), StringComparer.Ordinal);

    public Task<Reply> NowAsync(CancellationToken cancellation) =>
        Task.FromResult(engine.Take(State, new("", "", "", "", Start, "repeat")).Reply with { Cautions = [] });

    public Task<Reply> SayAsync(string text, CancellationToken cancellation)
    {
        var turn = engine.Take(State, new($"m{++said}", "voice", "voice", "technician", Start.AddMinutes(said), text));
        State = turn.After;
        return Task.FromResult(turn.Reply);
    }
}
