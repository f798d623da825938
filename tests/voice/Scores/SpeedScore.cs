using System.Diagnostics;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>Time from the last word to the start of the reply at a microphone's pace, processor time against the sound's length, memory, and repeats.</summary>
internal static class SpeedScore
{
    private static readonly SyntheticVoice Voice = new("flite", "slt");

    public static void Write(VoiceParts parts)
    {
        Console.WriteLine($"## Speed and memory\n\nLoad of the machine: {Load()}.");
        var before = Resident();
        using (var second = new VoiceParts())
        {
            Console.WriteLine($"Hearing, the grammars and what they are made from: {Resident() - before:0} MB more resident (a second one beside the first).");
        }

        var answers = Phrases.ForScoring.Where(a => a.Fact == "discharge_pressure").Select(a => a.Words).ToList();
        Console.WriteLine($"Processor time against the length of the sound: {Share(parts, answers):0.000} the first time since the start, {Share(parts, answers):0.000} after it.\n");
        Console.WriteLine("| from the last word | utterances | until it is taken for ended | rest of hearing, and the turn | until the reply can be played | in all: median | longest |\n| --- | --- | --- | --- | --- | --- | --- |");
        var waits = Waits(parts, answers).GetAwaiter().GetResult();
        Row("to the read-back of a number", [.. waits.Select(w => w.ReadBack)]);
        Row("of a yes to what follows", [.. waits.Select(w => w.Next)]);
        var again = FanNoise.Behind(Voice.Say("one sixteen"), 10, 3);
        var asked = parts.Dialogue.Start(Phrases.Question("discharge_pressure"), UnitSystem.Us).State;
        var words = Enumerable.Range(0, 20).Select(_ => parts.Recogniser.Hear(again, parts.Dialogue.Grammar(asked)).Words).Distinct().Count();
        Console.WriteLine($"\nTwenty repeats of one sound: {words} different result{(words == 1 ? "" : "s")}. Load of the machine at the end: {Load()}.\n");
    }

    // A number's whole way, with what a command or a pair must be told apart from.
    private static double Share(VoiceParts parts, List<string> answers)
    {
        var (processor, length) = (TimeSpan.Zero, TimeSpan.Zero);
        var state = parts.Dialogue.Start(Phrases.Question("discharge_pressure"), UnitSystem.Us).State;
        foreach (var answer in answers)
        {
            var speech = FanNoise.Behind(Voice.Say(answer), 20, 1);
            var used = Processor();
            _ = parts.Dialogue.Hear(state, parts.Recogniser.Hear(speech, parts.Dialogue.Grammar(state), words => parts.Dialogue.Rivals(state, words)));
            processor += Processor() - used;
            length += speech.Duration;
        }

        return processor / length;
    }

    // Each answer on a call of its own that has come to the head pressure; the first call of all is not counted.
    private static async Task<List<(ReplyWait ReadBack, ReplyWait Next)>> Waits(VoiceParts parts, List<string> answers)
    {
        var waits = new List<(ReplyWait, ReplyWait)>();
        foreach (var (answer, index) in answers.Prepend("two ten").Select((a, i) => (a, i)))
        {
            var visit = WarmBoxCall.Visit(parts.Engine);
            await WarmBoxCall.TypeAsync(visit, until: "discharge_pressure");
            var session = new VoiceSession(parts.Recogniser, parts.Dialogue, visit);
            var speech = new SpeechAhead(new EspeakVoice());
            await session.StartAsync();
            var (readBack, _) = await ReplyWait.OfAsync(session, speech, Voice.Say(answer), 20, 40 + index);
            var (next, _) = await ReplyWait.OfAsync(session, speech, Voice.Say("thats right"), 20, 80 + index);
            waits.Add((readBack, next));
        }

        return waits[1..];
    }

    private static void Row(string what, List<ReplyWait> waits)
    {
        string Median(Func<ReplyWait, TimeSpan> part) => $"{waits.Select(part).Order().ElementAt(waits.Count / 2).TotalSeconds:0.00} s";
        Console.WriteLine($"| {what} | {waits.Count} | {Median(w => w.Ended)} | {Median(w => w.Heard)} | {Median(w => w.Spoken)} | {Median(w => w.All)} | {waits.Max(w => w.All).TotalSeconds:0.00} s |");
    }

    private static TimeSpan Processor()
    {
        using var me = Process.GetCurrentProcess();
        return me.TotalProcessorTime;
    }

    private static string Load() => File.ReadAllText("/proc/loadavg").Split(' ')[0];

    private static double Resident()
    {
        GC.Collect();
        using var me = Process.GetCurrentProcess();
        return me.WorkingSet64 / 1048576.0;
    }
}
