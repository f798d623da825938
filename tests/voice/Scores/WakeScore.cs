using Assistant.Voice.Hearing;
using Assistant.Voice.Scoring.Kit;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>Asleep: which voices wake it and call an emergency, and what other talk does. The limits are set on the calibration voices and talk alone.</summary>
internal static class WakeScore
{
    private static readonly string[] Names = ["coldwalk", "hey coldwalk"];
    private static readonly string[] Alarms = ["emergency", "mayday", "gas alarm"];

    public static void Write(VoiceParts parts)
    {
        Console.WriteLine("## Asleep\n");
        Console.WriteLine("| voices | noise | its name: fit, lowest and median | heard as it | emergency: fit, lowest and median | heard as it | other talk: best fit as its name | as an emergency | talk in all |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (var (set, voices, talk) in new (string, IEnumerable<SyntheticVoice>, IEnumerable<string>)[]
        {
            ("calibration", SyntheticVoice.ForCalibration, [.. Phrases.ForeignForCalibration, .. Phrases.ForCalibration.Select(a => a.Words)]),
            ("flite and festival", SyntheticVoice.ForScoring, [.. Phrases.Foreign, .. Phrases.ForScoring.Select(a => a.Words)]),
            ("the hard set", SyntheticVoice.Hard, [.. Phrases.Foreign, .. Phrases.ForScoring.Select(a => a.Words)]),
        })
        {
            foreach (var noise in Rooms.All)
            {
                var seed = 30_000;
                List<(string Said, Heard Heard)> All(IEnumerable<string> words) => [.. voices.SelectMany(v => words.Select(w => ($"{v.Name} {Rooms.Name(noise)}: {w}", Hear(parts, v, w, noise, seed++))))];
                var (names, alarms, others) = (All([.. Names, .. Names]), All([.. Alarms, .. Alarms]), All(talk));
                Console.WriteLine($"| {set} | {Rooms.Name(noise)} | {Fits(names)} | {As(parts, names, "wake")} | {Fits(alarms)} | {As(parts, alarms, "command:emergency")} | {Best(parts, others, "wake")} | {Best(parts, others, "command:emergency")} | {others.Count} |");
                foreach (var (said, heard) in names.Concat(alarms).Concat(others.Where(o => o.Heard.Accepted is not null)))
                {
                    Console.Error.WriteLine($"{said} > {heard.Words} ({heard.Fit:0.0}, {heard.Margin:0.0})");
                }
            }
        }

        Console.WriteLine();
    }

    private static Heard Hear(VoiceParts parts, SyntheticVoice voice, string words, double noise, int seed)
    {
        var wake = parts.Grammars.Wake;
        return parts.Recogniser.Hear(FanNoise.Behind(voice.Say(words), noise, seed), wake, heard => wake.MeaningOf(heard) is { } meaning ? wake.Without(meaning) : null);
    }

    private static string Fits(List<(string Said, Heard Heard)> heard)
    {
        var fits = heard.Select(h => h.Heard.Fit).Order().ToList();
        return $"{fits[0]:0.0} {fits[fits.Count / 2]:0.0}";
    }

    private static string As(VoiceParts parts, List<(string Said, Heard Heard)> heard, string meaning) =>
        $"{heard.Count(h => h.Heard.Accepted is { } words && parts.Grammars.Wake.MeaningOf(words) == meaning)} of {heard.Count}";

    private static string Best(VoiceParts parts, List<(string Said, Heard Heard)> heard, string meaning)
    {
        var fits = heard.Where(h => h.Heard.Words is { } words && parts.Grammars.Wake.MeaningOf(words) == meaning).Select(h => h.Heard.Fit).OrderDescending().ToList();
        return fits.Count == 0 ? "none" : $"{fits[0]:0.0} ({fits.Count(f => f >= -15)} over -15)";
    }
}
