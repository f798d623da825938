using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Grammars;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Sound;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>
/// Value and unit exact before any read-back, per voice and noise: with the question's own grammar and with the broad one, without
/// the gate and with it.
/// </summary>
internal static class RecognitionScore
{
    private const int Seed = 7001;

    public static void Write(VoiceParts parts) => Write(parts, "Numbers heard before read-back", Phrases.ForScoring, SyntheticVoice.ForScoring.Concat(SyntheticVoice.Hard), Seed);

    internal static void Write(VoiceParts parts, string title, IReadOnlyList<SpokenAnswer> answers, IEnumerable<SyntheticVoice> voices, int seed)
    {
        Console.WriteLine($"## {title}\n");
        Console.WriteLine($"{answers.Count} answers a voice and noise; value and unit exact, in percent.\n");
        Console.WriteLine("| voice | noise | narrow, no gate | broad, no gate | gate: right | gate: wrong | gate: asked again |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- |");
        foreach (var voice in voices)
        {
            foreach (var noise in Rooms.All)
            {
                var narrow = answers.Select((a, i) => Hear(parts, voice, a, noise, seed + i, parts.Grammars.For(FactCatalogue.Find(a.Fact)!, [], UnitSystem.Us))).ToList();
                var broad = answers.Select((a, i) => Hear(parts, voice, a, noise, seed + i, parts.Grammars.Everything(UnitSystem.Us))).ToList();
                var (right, wrong) = (narrow.Count(h => h.Right && h.Accepted), narrow.Count(h => !h.Right && h.Accepted));
                var all = narrow.Count;
                Console.WriteLine($"| {voice.Name} | {Rooms.Name(noise)} | {Rooms.Percent(narrow.Count(h => h.Right), all)} | {Rooms.Percent(broad.Count(h => h.Right), all)} | " +
                    $"{Rooms.Percent(right, all)} | {Rooms.Percent(wrong, all)} | {Rooms.Percent(all - right - wrong, all)} |");
                Console.Error.WriteLine($"{voice.Name} {Rooms.Name(noise)}: " + string.Join(", ", narrow.Where(h => !h.Right).Select(h => h.Note)));
            }
        }

        Console.WriteLine();
    }

    /// <summary>Whether an answer was heard as it was meant, and whether the gate let it through.</summary>
    internal static (bool Right, bool Accepted, string Note) Judged(VoiceParts parts, SpokenAnswer answer, PcmAudio sound, SpeechGrammar grammar)
    {
        var fact = FactCatalogue.Find(answer.Fact)!;
        var heard = parts.Recogniser.Hear(sound, grammar);
        var readings = parts.Understander.Understand(heard.Words ?? "", new UnderstandingContext(fact, UnitSystem.Us)).Readings;
        var right = readings is [var only] && Math.Abs(only.Value - answer.Value!.Value) < 1e-9 && only.Unit.Symbol == answer.Unit;
        return (right, heard.Accepted is not null, $"{answer.Words} > {heard.Words} ({heard.Fit:0.0})");
    }

    private static (bool Right, bool Accepted, string Note) Hear(VoiceParts parts, SyntheticVoice voice, SpokenAnswer answer, double noise, int seed, SpeechGrammar grammar) =>
        Judged(parts, answer, FanNoise.Behind(voice.Say(answer.Words), noise, seed), grammar);
}
