using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Scoring.Kit;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>
/// Whole exchanges: a number or choice is said, read back, and confirmed or refused through the same noise and recogniser, until it
/// is stored or given up. What was stored is held against what was meant. Each voice and noise is written down once it is through
/// (artifacts/voice/stored.tsv), and a run that was broken off goes on from there; delete the file to begin anew.
/// </summary>
internal static class StoredScore
{
    private const int MostUtterances = 8;

    public static void Write(VoiceParts parts) =>
        Write(parts, "Values stored, through read-back and a spoken yes or no", "stored", [.. Phrases.ForScoring, .. Phrases.ChoicesForScoring], SyntheticVoice.ForScoring, SyntheticVoice.Hard, 20_000);

    internal static void Write(
        VoiceParts parts, string title, string name, IReadOnlyList<SpokenAnswer> answers, IReadOnlyList<SyntheticVoice> voices, IReadOnlyList<SyntheticVoice> hard, int seed)
    {
        Console.WriteLine($"## {title}\n");
        Console.WriteLine($"| voice | noise | {string.Join(" | ", Tally.Names)} |\n| --- | --- | {string.Join(" | ", Tally.Names.Select(_ => "---"))} |");
        var file = Path.Combine(Directory.CreateDirectory(Path.Combine(VoiceParts.Root, "artifacts/voice")).FullName, $"{name}.tsv");
        var done = File.Exists(file) ? File.ReadAllLines(file).Select(l => l.Split('\t')).ToDictionary(l => (l[0], l[1]), l => Tally.Parse(l[2..])) : [];
        foreach (var set in new[] { voices, hard })
        {
            var total = new Tally();
            foreach (var (voice, noise) in set.SelectMany(v => Rooms.All.Select(n => (v, n))))
            {
                if (!done.TryGetValue((voice.Name, Rooms.Name(noise)), out var tally))
                {
                    tally = Piece(parts, voice, noise, answers, seed);
                    File.AppendAllText(file, $"{voice.Name}\t{Rooms.Name(noise)}\t{string.Join('\t', tally.Counts)}\n");
                }

                Console.WriteLine($"| {voice.Name} | {Rooms.Name(noise)} | {tally} |");
                total.Add(tally);
            }

            Console.WriteLine($"| {(set == hard ? "the hard set" : "flite and festival")} | all | {total} |");
        }

        Console.WriteLine();
    }

    private static Tally Piece(VoiceParts parts, SyntheticVoice voice, double noise, IReadOnlyList<SpokenAnswer> answers, int seed)
    {
        var tally = new Tally();
        foreach (var answer in answers)
        {
            Exchange(parts, voice, answer, noise, seed += 10, tally);
        }

        return tally;
    }

    private static void Exchange(VoiceParts parts, SyntheticVoice voice, SpokenAnswer answer, double noise, int seed, Tally tally)
    {
        var visit = new OneQuestion(parts, FactCatalogue.Find(answer.Fact)!);
        var session = new VoiceSession(parts.Recogniser, parts.Dialogue, visit);
        var meant = answer.Choice ?? string.Create(CultureInfo.InvariantCulture, $"{answer.Value} {answer.Unit}");
        var person = new SyntheticTechnician(new Dictionary<string, string[]> { [answer.Fact] = [answer.Words] }, new Dictionary<string, string> { [answer.Fact] = meant });
        session.StartAsync(visit.Asked).GetAwaiter().GetResult();
        tally[Count.Values]++;
        var firsts = 0;
        for (var i = 0; i < MostUtterances && visit.Stored is null && !visit.Skipped; i++)
        {
            var before = session.State!;
            firsts += before.Phase is VoicePhase.Answer or VoicePhase.Digits ? 1 : 0;
            var turn = session.HearAsync(FanNoise.Behind(voice.Say(person.Next(before)!), noise, seed + i)).GetAwaiter().GetResult();
            tally[Count.Utterances]++;
            if (before.Phase != VoicePhase.Confirmation)
            {
                tally[Count.Unconfirmed] += visit.Stored is null ? 0 : 1;
                continue;
            }

            var isYes = turn.Heard.Words is { } heard && parts.Grammars.Confirm.MeaningOf(heard) == "accept";
            if (before.Pending!.Text == meant)
            {
                tally[Count.Yes]++;
                tally[Count.YesTaken] += turn.Sent is not null ? 1 : 0;
            }
            else
            {
                tally[Count.No]++;
                tally[Count.NoAsYes] += isYes ? 1 : 0;
                tally[Count.NoTaken] += turn.Sent is not null ? 1 : 0;
            }
        }

        tally[Count.Commands] += visit.Commands;
        tally[visit.Stored is null ? Count.GivenUp : Count.Stored]++;
        tally[Count.AtFirst] += visit.Stored is not null && firsts == 1 ? 1 : 0;
        if (visit.Stored is { } stored && stored != meant)
        {
            tally[Count.Wrong]++;
            Console.Error.WriteLine($"WRONG: {voice.Name} {Rooms.Name(noise)} {answer.Fact}: {answer.Words} stored as {stored}");
        }
    }

    /// <summary>A visit that asks one thing, keeps the value it is told, and counts commands, which store nothing.</summary>
    private sealed class OneQuestion(VoiceParts parts, Fact fact) : IVoiceVisit
    {
        public Reply Asked { get; } = Phrases.Question(fact.Name);

        public string? Stored { get; private set; }

        public bool Skipped { get; private set; }

        /// <summary>Commands taken; the technician gives none but "skip" after two misses.</summary>
        public int Commands { get; private set; }

        public UnitSystem Units => UnitSystem.Us;

        public Task<Reply> NowAsync(CancellationToken cancellation) => Task.FromResult(Asked);

        public Task<Reply> SayAsync(string text, CancellationToken cancellation)
        {
            var understood = parts.Understander.Understand(text, new UnderstandingContext(fact, Units));
            var isValue = fact.Choices.Contains(text.Replace(' ', '-')) || understood.Readings.Length + understood.Observations.Length > 0;
            Stored = isValue ? text : null;
            Skipped = text == "skip";
            Commands += isValue || Skipped ? 0 : 1;
            return Task.FromResult(Asked);
        }
    }

    private enum Count
    {
        Values, Utterances, AtFirst, Stored, GivenUp, Wrong, Unconfirmed, Commands, Yes, YesTaken, No, NoAsYes, NoTaken,
    }

    private sealed class Tally
    {
        private readonly int[] counts = new int[Enum.GetValues<Count>().Length];

        public static IReadOnlyList<string> Names { get; } =
        [
            "values", "utterances", "stored at the first answer", "stored", "given up", "stored wrong", "stored unconfirmed", "taken for a command", "yes said", "taken",
            "no said (read back wrong)", "heard as yes", "of these taken",
        ];

        public IEnumerable<int> Counts => counts;

        public int this[Count count]
        {
            get => counts[(int)count];
            set => counts[(int)count] = value;
        }

        public static Tally Parse(string[] counts)
        {
            var tally = new Tally();
            for (var i = 0; i < counts.Length; i++)
            {
                tally.counts[i] = int.Parse(counts[i], CultureInfo.InvariantCulture);
            }

            return tally;
        }

        public void Add(Tally other)
        {
            for (var i = 0; i < counts.Length; i++)
            {
                counts[i] += other.counts[i];
            }
        }

        public override string ToString() => string.Join(" | ", counts);
    }
}
