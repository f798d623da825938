using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>The whole warm-box call, sound to sound, per voice and noise: whether it ends with the typed run's facts, and the extra turns.</summary>
internal static class CallScore
{
    public static void Write(VoiceParts parts)
    {
        var typed = WarmBoxCall.Visit(parts.Engine);
        WarmBoxCall.TypeAsync(typed).GetAwaiter().GetResult();
        Console.WriteLine("## The whole call\n");
        Console.WriteLine("| voice | noise | utterances | extra | facts as typed | missing | wrong | longest speech |\n| --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (var voice in SyntheticVoice.ForScoring.Concat(SyntheticVoice.Hard))
        {
            foreach (var noise in Rooms.All)
            {
                var visit = WarmBoxCall.Visit(parts.Engine);
                var call = WarmBoxCall.SpeakAsync(parts, visit, voice, noise, new EspeakVoice()).GetAwaiter().GetResult();
                var (meant, got) = (typed.Facts, visit.Facts);
                var wrong = got.Count(f => meant.TryGetValue(f.Key, out var value) ? value != f.Value : true);
                Console.WriteLine($"| {voice.Name} | {Rooms.Name(noise)} | {call.Utterances} | {call.Extra} | {got.Count - wrong} of {meant.Count} | {meant.Keys.Except(got.Keys).Count()} | {wrong} | {call.Longest.TotalSeconds:0.0} s |");
                Console.Error.WriteLine($"{voice.Name} {Rooms.Name(noise)}:\n" + string.Join('\n', call.Lines));
            }
        }

        Console.WriteLine();
    }
}
