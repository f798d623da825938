using System.Diagnostics;
using Assistant.Trade.Quantities;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>Time from the end of speech to the start of the reply, processor time against the sound's length, memory, and repeats.</summary>
internal static class SpeedScore
{
    private static readonly SyntheticVoice Voice = new("flite", "slt");

    public static void Write(VoiceParts parts)
    {
        var before = Resident();
        using (var second = new VoiceParts())
        {
            Console.WriteLine($"## Speed and memory\n\nLoading hearing: {Resident() - before:0} MB more resident (a second one beside the first).");
        }

        var (waits, processor, sound) = (new List<double>(), TimeSpan.Zero, TimeSpan.Zero);
        var espeak = new EspeakVoice();
        var state = parts.Dialogue.Start(Phrases.Question("discharge_pressure"), UnitSystem.Us).State;

        // The first one also pays for the grammar and the just-in-time compiler: once a start, and not counted.
        parts.Recogniser.Hear(FanNoise.Behind(Voice.Say("two ten"), 20, 2), parts.Dialogue.Grammar(state), words => parts.Dialogue.Rivals(state, words));
        foreach (var answer in Phrases.ForScoring.Where(a => a.Fact == "discharge_pressure"))
        {
            var speech = FanNoise.Behind(Voice.Say(answer.Words), 20, 1);
            var (clock, used) = (Stopwatch.StartNew(), Process.GetCurrentProcess().TotalProcessorTime);
            var step = parts.Dialogue.Hear(state, parts.Recogniser.Hear(speech, parts.Dialogue.Grammar(state), words => parts.Dialogue.Rivals(state, words)));
            processor += Process.GetCurrentProcess().TotalProcessorTime - used;
            sound += speech.Duration;
            espeak.SayAsync(step.Say, step.State.Style).GetAwaiter().GetResult();
            waits.Add(clock.Elapsed.TotalSeconds);
        }

        waits.Sort();
        Console.WriteLine($"From a whole utterance to its reply's sound, whole: median {waits[waits.Count / 2]:0.00} s, longest {waits[^1]:0.00} s ({waits.Count} answers; the pause of 0.4 s that ends an utterance hands free comes before).");
        Console.WriteLine($"Processor time against the length of the sound: {processor / sound:0.000}.");
        var again = FanNoise.Behind(Voice.Say("one sixteen"), 10, 3);
        var words = Enumerable.Range(0, 20).Select(_ => parts.Recogniser.Hear(again, parts.Dialogue.Grammar(state)).Words).Distinct().Count();
        Console.WriteLine($"Twenty repeats of one sound: {words} different result{(words == 1 ? "" : "s")}.\n");
    }

    private static double Resident()
    {
        GC.Collect();
        using var me = Process.GetCurrentProcess();
        return me.WorkingSet64 / 1048576.0;
    }
}
