using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Hearing;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Sound;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>The same numbers as a microphone brings them: found in a running sound, and cut where they have likely ended.</summary>
internal static class LiveScore
{
    public static void Write(VoiceParts parts)
    {
        Console.WriteLine("## Numbers found in a running sound\n");
        Console.WriteLine($"{Phrases.ForScoring.Count} answers a voice and noise, in percent.\n");
        Console.WriteLine("| voice | noise | value and unit exact | not found, or cut in pieces |\n| --- | --- | --- | --- |");
        foreach (var voice in SyntheticVoice.ForScoring)
        {
            foreach (var noise in Rooms.All)
            {
                var (right, lost) = (0, 0);
                foreach (var (answer, index) in Phrases.ForScoring.Select((a, i) => (a, i)))
                {
                    var found = Found(FanNoise.Behind(voice.Say(answer.Words), noise, 7001 + index, lead: 1));
                    lost += found.Count == 1 ? 0 : 1;
                    right += found.Count == 1 && RecognitionScore.Judged(parts, answer, found[0], parts.Grammars.For(FactCatalogue.Find(answer.Fact)!, [], UnitSystem.Us)).Right ? 1 : 0;
                }

                Console.WriteLine($"| {voice.Name} | {Rooms.Name(noise)} | {Rooms.Percent(right, Phrases.ForScoring.Count)} | {Rooms.Percent(lost, Phrases.ForScoring.Count)} |");
            }
        }

        Console.WriteLine();
    }

    private static List<PcmAudio> Found(PcmAudio sound)
    {
        var ear = new Endpointer(new());
        var found = sound.Samples.Chunk(320).SelectMany(piece => ear.Take(piece)).ToList();
        return ear.Finish() is { } last ? [.. found, last] : found;
    }
}
