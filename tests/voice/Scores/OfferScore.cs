using Assistant.Dialogue.Replies;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Scoring.Kit;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>Where a walk is offered: how often a spoken yes begins it at once, and how often anything else does.</summary>
internal static class OfferScore
{
    private static readonly string[] No = ["no", "nope", "wrong", "thats wrong", "negative", "later", "not today"];
    private static readonly string[] Yes = ["yes", "yep", "yeah", "correct", "thats right", "affirmative"];

    // The two kinds of offer: a walk alone, and the walk through a repair.
    private static readonly string[][] Kinds = [["yes", "later"], ["yes", "done", "later"]];

    public static void Write(VoiceParts parts)
    {
        Console.WriteLine("## A walk that is offered\n\n| voices | noise | yes said | begun at once | read back | no or later said | begun by it | other talk | begun by it |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (var (name, voices, foreign) in new[]
        {
            ("calibration", SyntheticVoice.ForCalibration, Phrases.ForeignForCalibration),
            ("flite and festival", SyntheticVoice.ForScoring, Phrases.Foreign),
            ("the hard set", SyntheticVoice.Hard, Phrases.Foreign),
        })
        {
            foreach (var noise in Rooms.All)
            {
                var (yes, no, other) = (Told(parts, voices, Yes, noise), Told(parts, voices, No, noise), Told(parts, voices, foreign, noise));
                Console.WriteLine($"| {name} | {Rooms.Name(noise)} | {yes.Count} | {yes.Count(Begins)} | {yes.Count(IsAsked)} | {no.Count} | {no.Count(Begins)} | {other.Count} | {other.Count(Begins)} |");
            }
        }

        Console.WriteLine();
    }

    private static bool Begins(VoiceStep step) => step.Send == "yes";

    private static bool IsAsked(VoiceStep step) => step.State is { Phase: VoicePhase.Confirmation, Pending.Text: "yes" };

    private static List<VoiceStep> Told(VoiceParts parts, IEnumerable<SyntheticVoice> voices, IEnumerable<string> words, double noise) =>
        [.. voices.SelectMany(v => words.SelectMany(w => Kinds, (w, kind) => (Words: w, Kind: kind)), (v, said) => (Voice: v, said.Words, said.Kind)).Select((s, i) => Hear(parts, s.Kind, s.Voice, s.Words, noise, 65_000 + i))];

    private static VoiceStep Hear(VoiceParts parts, string[] kind, SyntheticVoice voice, string words, double noise, int seed)
    {
        var asked = new Reply(Phrase.Empty, [], [], new("Now?", "Now?"), [.. kind], null, [], new("warm-box", "act", "unit"), []);
        var state = parts.Dialogue.Start(asked, UnitSystem.Us).State;
        var heard = parts.Recogniser.Hear(FanNoise.Behind(voice.Say(words), noise, seed), parts.Dialogue.Grammar(state), h => parts.Dialogue.Rivals(state, h), h => parts.Dialogue.Instead(state, h));
        return parts.Dialogue.Hear(state, heard);
    }
}
