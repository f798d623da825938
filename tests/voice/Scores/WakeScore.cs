using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Hearing;
using Assistant.Voice.Scoring.Kit;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>Asleep: which voices wake it and call for help, and what other talk does. The limits are set on the calibration voices and talk alone.</summary>
internal static class WakeScore
{
    private static readonly string[] Names = ["coldwalk", "hey coldwalk"];
    private static readonly string[] Calls = ["emergency", "mayday", "gas alarm"];

    public static void Write(VoiceParts parts)
    {
        Console.WriteLine("## Asleep\n");
        Console.WriteLine("| voices | noise | its name said | woke it | lowest fit | a call for help | passed on | asked about | other talk | woke it | best fit as its name | passed on | asked about |\n" +
            "| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (var (set, voices, talk) in new (string, IEnumerable<SyntheticVoice>, IEnumerable<string>)[]
        {
            ("calibration", SyntheticVoice.ForCalibration, [.. Phrases.ForeignForCalibration, .. Phrases.ForCalibration.Select(a => a.Words)]),
            ("flite and festival", SyntheticVoice.ForScoring, [.. Phrases.Foreign, .. Phrases.ForScoring.Select(a => a.Words).Where((_, i) => i % 3 == 0)]),
            ("the hard set", SyntheticVoice.Hard, [.. Phrases.Foreign, .. Phrases.ForScoring.Select(a => a.Words).Where((_, i) => i % 3 == 0)]),
        })
        {
            foreach (var noise in Rooms.All)
            {
                var seed = 30_000;
                List<(Heard Heard, VoiceStep Step)> All(IEnumerable<string> words) => [.. voices.SelectMany(v => words.Select(w => Hear(parts, v, w, noise, seed++)))];
                var (names, calls, others) = (All([.. Names, .. Names]), All([.. Calls, .. Calls]), All(talk));
                Console.WriteLine($"| {set} | {Rooms.Name(noise)} | {names.Count} | {names.Count(Woke)} | {names.Min(n => NameFit(parts, n.Heard)):0.0} | {calls.Count} | {calls.Count(Passed)} | {calls.Count(Asked)} | " +
                    $"{others.Count} | {others.Count(Woke)} | {others.Max(o => NameFit(parts, o.Heard)):0.0} | {others.Count(Passed)} | {others.Count(Asked)} |");
            }
        }

        Console.WriteLine();
    }

    private static (Heard Heard, VoiceStep Step) Hear(VoiceParts parts, SyntheticVoice voice, string words, double noise, int seed)
    {
        var asleep = VoiceDialogue.Sleep(parts.Dialogue.Start(Phrases.Question("discharge_pressure"), UnitSystem.Us).State);
        var sound = FanNoise.Behind(voice.Say(words), noise, seed);
        var heard = parts.Recogniser.Hear(sound, parts.Dialogue.Grammar(asleep), w => parts.Dialogue.Rivals(asleep, w), w => parts.Dialogue.Instead(asleep, w));
        return (heard, parts.Dialogue.Hear(asleep, heard));
    }

    private static bool Woke((Heard Heard, VoiceStep Step) heard) => heard.Step is { Send: null, State.Phase: VoicePhase.Answer };

    private static bool Passed((Heard Heard, VoiceStep Step) heard) => heard.Step.Send == "emergency";

    private static bool Asked((Heard Heard, VoiceStep Step) heard) => heard.Step.State.Phase == VoicePhase.Confirmation;

    private static double NameFit(VoiceParts parts, Heard heard) =>
        heard.Words is { } words && parts.Grammars.Wake.MeaningOf(words) == "wake" ? heard.Fit : heard.Asked?.Fit ?? double.NegativeInfinity;
}
