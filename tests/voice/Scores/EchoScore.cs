using Assistant.Voice.Hearing;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Sound;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>While the assistant speaks: how often its own echo is taken for a control word, and how often a control word over the echo is heard.</summary>
internal static class EchoScore
{
    private static readonly string[] Speeches =
    [
        "1 1 7 P S I. Correct, or wrong?", "355 P S I. Condensing at 136 degrees. 48 degrees over the air, plate 25 degrees. Suction pressure?",
        "Lock out, tag, prove dead. Good. Air onto condenser?", "Fans start by themselves: hands out. Running. Condenser fans: all, some, none, cycling?",
        "Done in here. Take gauges, clamps, meter, lock, brush. Tell me when at the unit.", "Once more, please. Say correct, or wrong.", "I wait. Say continue.",
    ];

    private static readonly string[] Controls = ["stop", "wait", "say again", "slower", "louder", "hold on", "repeat"];

    public static void Write(VoiceParts parts)
    {
        Console.WriteLine("## While the assistant speaks\n");
        Console.WriteLine("| echo under the technician's voice | own speeches | taken for a control | control words over it | heard | heard as another |\n| --- | --- | --- | --- | --- | --- |");
        var espeak = new EspeakVoice();
        foreach (var echo in new[] { 30.0, 20, 10 })
        {
            var (speeches, taken, said, heard, other) = (0, 0, 0, 0, 0);
            foreach (var text in Speeches)
            {
                var speech = espeak.SayAsync(text, new()).GetAwaiter().GetResult().At(PcmAudio.HearingRate);
                var faint = Scaled(speech, Math.Pow(10, -echo / 20));
                speeches++;
                taken += Utterances(faint).Count(u => parts.Recogniser.Hear(u, parts.Dialogue.WhileSpeaking).Accepted is not null);
                foreach (var word in Controls)
                {
                    var voice = SyntheticVoice.ForScoring[said % SyntheticVoice.ForScoring.Count];
                    var words = Utterances(Over(faint, voice.Say(word))).Select(u => parts.Recogniser.Hear(u, parts.Dialogue.WhileSpeaking)).Where(h => h.Accepted is not null).Select(h => h.Words!).ToList();
                    said++;
                    var grammar = parts.Dialogue.WhileSpeaking;
                    heard += words.Exists(w => grammar.MeaningOf(w) == grammar.MeaningOf(word)) ? 1 : 0;
                    other += words.Count > 0 && !words.Exists(w => grammar.MeaningOf(w) == grammar.MeaningOf(word)) ? 1 : 0;
                }
            }

            Console.WriteLine($"| {echo} dB | {speeches} | {taken} | {said} | {heard} | {other} |");
        }

        Console.WriteLine();
    }

    private static List<PcmAudio> Utterances(PcmAudio sound)
    {
        var ear = new Endpointer(EndpointerSettings.OverSpeech);
        List<PcmAudio> all = [.. sound.Samples.Chunk(4096).SelectMany(piece => ear.Take(piece))];
        return ear.Finish() is { } last ? [.. all, last] : all;
    }

    private static PcmAudio Scaled(PcmAudio sound, double gain) => sound with { Samples = [.. sound.Samples.Select(s => (short)(s * gain))] };

    private static PcmAudio Over(PcmAudio echo, PcmAudio voice)
    {
        const int Start = PcmAudio.HearingRate / 2;
        var samples = new short[Math.Max(echo.Samples.Length, Start + voice.Samples.Length + Start)];
        echo.Samples.CopyTo(samples, 0);
        for (var i = 0; i < voice.Samples.Length; i++)
        {
            samples[Start + i] = (short)Math.Clamp(samples[Start + i] + voice.Samples[i], short.MinValue, short.MaxValue);
        }

        return new(samples, echo.Rate);
    }
}
