using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Scoring.Kit;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>
/// Options of walks through whole exchanges: each is said by the word on its button and by another of its words, read back, and confirmed or
/// refused through the same noise. What was chosen is held against what was meant.
/// </summary>
internal static class ChosenScore
{
    private const int MostUtterances = 8;

    private static readonly SyntheticVoice[] Voices = [new("flite", "slt"), new("flite", "awb")];

    public static void Write(VoiceParts parts)
    {
        Console.WriteLine("## Options of walks, through read-back and a spoken yes or no\n\n| voice | noise | options said | utterances | chosen at the first answer | chosen | given up | chosen wrong | chosen unconfirmed |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        var said = Said(parts).ToList();
        foreach (var (voice, noise) in Voices.SelectMany(v => Rooms.All.Select(n => (v, n))))
        {
            var results = said.Select((s, i) => Exchange(parts, voice, s, noise, 60_000 + (10 * i))).ToList();
            int Of(Func<Result, bool> which) => results.Count(which);
            Console.WriteLine($"| {voice.Name} | {Rooms.Name(noise)} | {results.Count} | {results.Sum(r => r.Utterances)} | {Of(r => r is { Chosen: not null, Answers: 1 })} | {Of(r => r.Chosen is not null)} | {Of(r => r.Chosen is null)} "
                + $"| {Of(r => r.IsWrong)} | {Of(r => r.IsUnconfirmed)} |");
        }

        Console.WriteLine();
    }

    // Stops with the same options are one question to the ear.
    private static IEnumerable<OptionSaid> Said(VoiceParts parts) =>
        from stop in parts.Walks.All.SelectMany(w => w.Stops.Where(s => s.Choice is not null), (w, s) => (Walk: w.Name, Stop: s)).DistinctBy(s => string.Join('|', s.Stop.Choice!.Options.SelectMany(o => o.Words)))
        let reply = Asking(parts, stop.Walk, stop.Stop)
        let grammar = parts.Grammars.For(reply, UnitSystem.Us)
        from choice in reply.Choices
        let words = grammar.Meanings["option:" + choice]
        from word in words.Contains(choice) ? new[] { choice, words.FirstOrDefault(w => w != choice && w != choice.Replace("it ", "", StringComparison.Ordinal)) ?? choice }.Distinct() : words.Take(2)
        select new OptionSaid(reply, choice, word);

    private static Reply Asking(VoiceParts parts, string walk, WalkStop stop) => new(
        Phrase.Empty, [], [], parts.Phrases.Say(stop.Says, UnitSystem.Us), [.. stop.Choice!.Options.Select(o => parts.Phrases.Word(o.Name))], null, [], new(walk, stop.Name, stop.Place ?? "unit"), []);

    private static Result Exchange(VoiceParts parts, SyntheticVoice voice, OptionSaid option, double noise, int seed)
    {
        var visit = new OneChoice(option.Asked);
        var session = new VoiceSession(parts.Recogniser, parts.Dialogue, visit);
        var stop = "stop " + option.Asked.Walk!.Stop;
        var person = new SyntheticTechnician(new Dictionary<string, string[]> { [stop] = [option.Words] }, new Dictionary<string, string> { [stop] = option.Choice });
        session.StartAsync(option.Asked).GetAwaiter().GetResult();
        var (said, answers, isUnconfirmed) = (0, 0, false);
        while (said < MostUtterances && visit.Chosen is null)
        {
            var before = session.State!;
            answers += before.Phase == VoicePhase.Answer ? 1 : 0;
            session.HearAsync(FanNoise.Behind(voice.Say(person.Next(before)!), noise, seed + said++)).GetAwaiter().GetResult();
            isUnconfirmed |= visit.Chosen is not null && before.Phase != VoicePhase.Confirmation;
        }

        var isWrong = visit.Chosen is { } chosen && chosen != option.Choice;
        if (isWrong || isUnconfirmed)
        {
            Console.Error.WriteLine($"WRONG: {voice.Name} {Rooms.Name(noise)} {stop}: {option.Words} chosen as {visit.Chosen}");
        }

        return new(said, answers, visit.Chosen, isWrong, isUnconfirmed);
    }

    private sealed record OptionSaid(Reply Asked, string Choice, string Words);

    private sealed record Result(int Utterances, int Answers, string? Chosen, bool IsWrong, bool IsUnconfirmed);

    /// <summary>A visit that asks one thing and keeps what it is told of it; commands change nothing.</summary>
    private sealed class OneChoice(Reply asked) : IVoiceVisit
    {
        public string? Chosen { get; private set; }

        public UnitSystem Units => UnitSystem.Us;

        public Task<Reply> NowAsync(CancellationToken cancellation) => Task.FromResult(asked);

        public Task<Reply> SayAsync(string text, CancellationToken cancellation)
        {
            Chosen = asked.Choices.Contains(text) ? text : null;
            return Task.FromResult(asked);
        }
    }
}
