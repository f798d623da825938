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

    /// <summary>What is kept around an utterance, and how long its end is waited for: set on the calibration voices and phrases, with noise of their own.</summary>
    public static void Calibrate(VoiceParts parts)
    {
        Console.WriteLine("## Numbers found in a running sound (calibration voices)\n");
        Console.WriteLine("| kept before | likely ended after | over the noise | at 20 dB | at 10 dB | of |\n| --- | --- | --- | --- | --- | --- |");
        foreach (var (lead, likely, over) in new[] { (30, 20, 6.0), (60, 20, 6), (100, 20, 6), (30, 26, 6), (60, 26, 6), (100, 26, 6), (60, 20, 5), (60, 32, 6), (60, 38, 6) })
        {
            var settings = new EndpointerSettings { LeadFrames = lead, LikelyEndFrames = likely, OverNoise = over, WholeEndFrames = Math.Max(28, likely + 4) };
            var right = new[] { 20.0, 10 }.Select(noise => SyntheticVoice.ForCalibration.Sum(v => Enumerable.Range(0, 2).Sum(again => Phrases.ForCalibration.Where((a, i) =>
            {
                var found = Found(FanNoise.Behind(v.Say(a.Words), noise, 60_001 + (100 * again) + i, lead: 1.5), settings);
                return found.Count == 1 && RecognitionScore.Judged(parts, a, found[0], parts.Grammars.For(FactCatalogue.Find(a.Fact)!, [], UnitSystem.Us)).Right;
            }).Count())));
            Console.WriteLine($"| {lead * 10} ms | {likely * 10} ms | {over:0} dB | {string.Join(" | ", right)} | {Phrases.ForCalibration.Count * SyntheticVoice.ForCalibration.Count * 2} |");
        }

        Console.WriteLine();
    }

    private static List<PcmAudio> Found(PcmAudio sound, EndpointerSettings? settings = null)
    {
        var ear = new Endpointer(settings ?? new());
        var found = sound.Samples.Chunk(320).SelectMany(piece => ear.Take(piece)).ToList();
        return ear.Finish() is { } last ? [.. found, last] : found;
    }
}
