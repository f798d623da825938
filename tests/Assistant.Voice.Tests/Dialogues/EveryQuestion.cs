using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Voice.Scoring.Kit;

namespace Assistant.Voice.Tests.Dialogues;

/// <summary>A question the engine asks, with the visit it was asked on.</summary>
internal sealed record PutQuestion(string Where, VisitState State, Reply Reply);

/// <summary>Every stop of every walk that asks or chooses, and every kind of question besides, as the engine itself puts them.</summary>
internal static class EveryQuestion
{
    private const int MostTurns = 70;

    private static IReadOnlyList<PutQuestion>? put;

    private static readonly DateTimeOffset Start = new(2026, 7, 14, 8, 0, 0, TimeSpan.Zero);

    // How each walk is gone: the option chosen at each stop in turn, the last one from there on, and a number of that size.
    private static readonly (int[] Options, int Number)[] Ways = [([0], 5), ([1], 5), ([2], 5), ([0], 60), ([1], 60), ([0], 300), ([1], 300), ([0, 1, 1, 0], 60), ([0, 1, 1, 1], 60)];

    /// <summary>The kinds beside the walks' own: each line is said by the person before the colon.</summary>
    private static readonly string[][] Talks =
    [
        ["a: ok", "a: box 41", "b: box 55"],
        ["a: evaporator fans some", "b: evaporator fans none"],
        ["a: 24 lb out"], ["a: cylinder R3, 24 lb out"], ["a: recovered 4 lb into cylinder Q7", "a: 20 lb tare", "a: 24 lb"],
        ["a: ok", "a: suction pressure minus 5"], ["a: 185"], ["a: ok", "a: plus or minus 5"], ["a: ok", "a: maybe"],
        ["a: ok", "a: 400 degF"], ["a: ok", "a: 5"], ["a: condenser coil dirty, ambient 95, discharge 20 psig", "a: ok"],
        ["a: get me the ambient temperature", "a: leak search"], ["a: ask for the box temperature", "b: repeat"], ["a: leak search", "a: skip", "a: done"], ["a: charge", "a: skip"],
    ];

    /// <summary>Each question once, by where it stands, what it asks and what it offers.</summary>
    public static IReadOnlyList<PutQuestion> Of(VoiceParts parts) => put ??=
    [
        .. Walked(parts).Concat(Written(parts)).Concat(Talked(parts)).Where(q => q.Reply.Ask is { IsEmpty: false })
            .DistinctBy(q => (q.Reply.Walk, q.Reply.AskedFact, q.Reply.Ask!.Full, string.Join('|', q.Reply.Choices))),
    ];

    private static IEnumerable<PutQuestion> Walked(VoiceParts parts) => parts.Walks.All.SelectMany(_ => Ways, (walk, way) => Walked(parts.Engine, walk, way)).SelectMany(q => q);

    private static IEnumerable<PutQuestion> Walked(ITurnEngine engine, WalkDefinition walk, (int[] Options, int Number) way)
    {
        var opening = Open(engine, ("refrigerant", "R404A"), ("application", "cooler"), ("full_charge", "20 lb"));
        var (state, reply) = (opening.After, opening.Reply);
        if (walk.Name != WalkLibrary.OpeningWalk)
        {
            (_, state, reply) = Say(engine, state, 0, "a", walk.Title);
        }

        var chosen = 0;
        for (var turn = 1; turn < MostTurns && state.Outcome is null; turn++)
        {
            yield return new($"{walk.Name}, options {string.Join(' ', way.Options)}, number {way.Number}, {reply.Walk?.Stop}", state, reply);
            var said = reply.Walk?.Stop is "spot" ? "leak at the flare nut"
                : reply.AskedFact is null && reply.Choices.Length > 1 ? reply.Choices[Math.Min(way.Options[Math.Min(chosen++, way.Options.Length - 1)], reply.Choices.Length - 1)]
                : reply.Choices.Length > 0 ? reply.Choices[0]
                : reply.AskedFact == "refrigerant" ? "R404A"
                : reply.AskedFact is "suction_pressure" or "head_pressure_control_setting" && way.Number == 5 ? "-5"
                : reply.AskedFact is not null && turn % 7 != 0 ? $"{way.Number} {reply.Units.FirstOrDefault()}" : "skip";
            var before = reply.Walk;
            (_, state, reply) = Say(engine, state, turn, "a", said);
            if (reply.Walk == before && reply.AskedFact is not null)
            {
                yield return new($"{walk.Name}, \"{said}\"", state, reply);
                (_, state, reply) = Say(engine, state, turn, "a", reply.Choices.Contains("yes") ? "yes" : "skip");
            }
        }
    }

    private static IEnumerable<PutQuestion> Written(VoiceParts parts) =>
        WrittenCalls.Files.SelectMany(f => WrittenCalls.Turns(parts.Engine, f), (f, turn) => new PutQuestion($"{Path.GetFileName(f)}, \"{turn.Said}\"", turn.State, turn.Reply));

    private static IEnumerable<PutQuestion> Talked(VoiceParts parts)
    {
        foreach (var talk in Talks)
        {
            var opening = Open(parts.Engine, ("refrigerant", "R404A"), ("application", "freezer"));
            var (state, reply, turn) = (opening.After, opening.Reply, 0);
            foreach (var line in talk)
            {
                (_, state, reply) = Say(parts.Engine, state, ++turn, line[..1], line[3..]);
                yield return new(string.Join(" / ", talk.Take(turn)), state, reply);
            }
        }
    }

    /// <summary>What the engine makes of a line.</summary>
    public static Turn Say(ITurnEngine engine, VisitState state, int turn, string person, string text) =>
        engine.Take(state, new($"m{turn}.{text}.{state.Version}", "voice", "voice", person, Start.AddSeconds(30 * turn), text));

    private static Turn Open(ITurnEngine engine, params (string Fact, string Text)[] record) =>
        engine.Open(new VisitOpened("Invented Creamery", null, "us", record.ToImmutableDictionary(k => k.Fact, k => k.Text)) { At = Start, By = "a" });
}
