using Assistant.Dialogue.Replies;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Scoring.Kit;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>
/// Whole exchanges: a number or choice is said, read back, and confirmed or refused through the same noise and recogniser, until it
/// is stored or given up. What was stored is held against what was meant.
/// </summary>
internal static class StoredScore
{
    private const int MostUtterances = 8;

    public static void Write(VoiceParts parts)
    {
        Console.WriteLine("## Values stored, through read-back and a spoken yes or no\n");
        Console.WriteLine("| voice | noise | values | utterances | stored at the first answer | stored | given up | stored wrong | stored unconfirmed | heard wrong, stopped by the read-back | no said | heard as yes | of these taken |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        var total = new Tally();
        foreach (var voice in SyntheticVoice.ForScoring.Concat(SyntheticVoice.Hard))
        {
            foreach (var noise in Rooms.All)
            {
                var tally = new Tally();
                var seed = 20_000;
                foreach (var answer in Phrases.ForScoring.Concat(Phrases.ChoicesForScoring))
                {
                    Exchange(parts, voice, answer, noise, seed += 10, tally);
                }

                Console.WriteLine($"| {voice.Name} | {Rooms.Name(noise)} | {tally} |");
                total.Add(tally);
            }
        }

        Console.WriteLine($"| all | | {total} |\n");
    }

    private static void Exchange(VoiceParts parts, SyntheticVoice voice, SpokenAnswer answer, double noise, int seed, Tally tally)
    {
        var visit = new OneQuestion(answer.Fact);
        var session = new VoiceSession(parts.Recogniser, parts.Dialogue, visit);
        var meant = answer.Choice ?? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{answer.Value} {answer.Unit}");
        var person = new SyntheticTechnician(new Dictionary<string, string> { [answer.Fact] = answer.Words }, new Dictionary<string, string> { [answer.Fact] = meant });
        session.StartAsync(visit.Asked).GetAwaiter().GetResult();
        tally.Values++;
        var firsts = 0;
        for (var i = 0; i < MostUtterances && visit.Stored is null; i++)
        {
            var before = session.State!;
            firsts += before.Phase is VoicePhase.Answer or VoicePhase.Digits ? 1 : 0;
            var words = person.Next(before)!;
            var turn = session.HearAsync(FanNoise.Behind(voice.Say(words), noise, seed + i)).GetAwaiter().GetResult();
            tally.Utterances++;
            if (before.Phase != VoicePhase.Confirmation)
            {
                continue;
            }

            var isNo = before.Pending!.Text != meant;
            tally.HeardWrong += isNo ? 1 : 0;
            tally.Noes += isNo ? 1 : 0;
            var isYes = turn.Heard.Words is { } heard && parts.Grammars.Confirm.MeaningOf(heard) == "accept";
            tally.NoAsYes += isNo && isYes ? 1 : 0;
            tally.NoTaken += isNo && turn.Sent is not null ? 1 : 0;
        }

        tally.GivenUp += visit.Stored is null ? 1 : 0;
        tally.Stored += visit.Stored is null ? 0 : 1;
        tally.AtFirst += visit.Stored is not null && firsts == 1 ? 1 : 0;
        if (visit.Stored is { } stored && stored != meant && stored != "skip")
        {
            tally.Wrong++;
            Console.Error.WriteLine($"WRONG: {voice.Name} {Rooms.Name(noise)} {answer.Fact}: {answer.Words} stored as {stored}");
        }

        tally.Unconfirmed += visit.Stored is not null && answer.Choice is null && visit.Stored != "skip" && session.LastPhase != VoicePhase.Confirmation ? 1 : 0;
    }

    /// <summary>A visit that asks one thing and keeps what it is told.</summary>
    private sealed class OneQuestion(string fact) : IVoiceVisit
    {
        public Reply Asked { get; } = Phrases.Question(fact);

        public string? Stored { get; private set; }

        public UnitSystem Units => UnitSystem.Us;

        public Task<Reply> NowAsync(CancellationToken cancellation) => Task.FromResult(Asked);

        public Task<Reply> SayAsync(string text, CancellationToken cancellation)
        {
            Stored = text;
            return Task.FromResult(Asked);
        }
    }

    private sealed class Tally
    {
        public int Values { get; set; }

        public int Utterances { get; set; }

        public int AtFirst { get; set; }

        public int Stored { get; set; }

        public int GivenUp { get; set; }

        public int Wrong { get; set; }

        public int Unconfirmed { get; set; }

        public int HeardWrong { get; set; }

        public int Noes { get; set; }

        public int NoAsYes { get; set; }

        public int NoTaken { get; set; }

        public void Add(Tally other)
        {
            (Values, Utterances, AtFirst, Stored) = (Values + other.Values, Utterances + other.Utterances, AtFirst + other.AtFirst, Stored + other.Stored);
            (GivenUp, Wrong, Unconfirmed, HeardWrong) = (GivenUp + other.GivenUp, Wrong + other.Wrong, Unconfirmed + other.Unconfirmed, HeardWrong + other.HeardWrong);
            (Noes, NoAsYes, NoTaken) = (Noes + other.Noes, NoAsYes + other.NoAsYes, NoTaken + other.NoTaken);
        }

        public override string ToString() =>
            $"{Values} | {Utterances} | {AtFirst} | {Stored} | {GivenUp} | {Wrong} | {Unconfirmed} | {HeardWrong} | {Noes} | {NoAsYes} | {NoTaken}";
    }
}
