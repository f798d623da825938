using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Grammars;
using Assistant.Voice.Hearing;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Sound;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>
/// What the thresholds are set from: the fits of right and foreign speech, and the margins of spoken yes and no, with voices, phrases
/// and noise that no figure is reported for.
/// </summary>
internal static class CalibrationScore
{
    private static readonly string[] Yes = ["yes", "yep", "yeah", "correct", "thats right", "affirmative"];
    private static readonly string[] No = ["no", "nope", "wrong", "thats wrong", "negative"];

    public static void Write(VoiceParts parts)
    {
        Console.WriteLine("## Calibration (other voices, phrases and noise than the figures)\n");
        Console.WriteLine("Fit, log units a frame: the 5th, 15th and 50th percentile of answers; the 50th, 95th and 99th of foreign speech.\n");
        Console.WriteLine("| noise | answers | foreign |\n| --- | --- | --- |");
        foreach (var noise in Rooms.All)
        {
            var seed = 100;
            var answers = SyntheticVoice.ForCalibration.SelectMany(v => Phrases.ForCalibration.Select(a =>
                parts.Recogniser.Hear(FanNoise.Behind(v.Say(a.Words), noise, seed++), parts.Grammars.For(FactCatalogue.Find(a.Fact)!, [], UnitSystem.Us)).Fit)).Order().ToList();
            var foreign = SyntheticVoice.ForCalibration.SelectMany(v => Phrases.ForeignForCalibration.Select(w =>
                parts.Recogniser.Hear(FanNoise.Behind(v.Say(w), noise, seed++), parts.Grammars.For(FactCatalogue.SuctionPressure, [], UnitSystem.Us)).Fit)).Order().ToList();
            Console.WriteLine($"| {Rooms.Name(noise)} | {At(answers, 5)} {At(answers, 15)} {At(answers, 50)} | {At(foreign, 50)} {At(foreign, 95)} {At(foreign, 99)} |");
        }

        Console.WriteLine("\nMargin of yes over no: the lowest, 5th and 50th percentile of spoken yes; the 50th, 99th and highest of spoken no.\n");
        Console.WriteLine("| noise | yes | no |\n| --- | --- | --- |");
        foreach (var noise in Rooms.All.Append(5))
        {
            var (yes, no) = (Margins(parts, Yes, noise, 5000), Margins(parts, No, noise, 6000));
            Console.WriteLine($"| {Rooms.Name(noise)} | {At(yes, 0)} {At(yes, 5)} {At(yes, 50)} | {At(no, 50)} {At(no, 99)} {At(no, 100)} |");
        }

        Console.WriteLine();
    }

    private static List<double> Margins(VoiceParts parts, string[] words, double noise, int seed) =>
        [.. SyntheticVoice.ForCalibration.SelectMany(v => words.SelectMany(w => Enumerable.Range(0, 4).Select(_ => Margin(parts, FanNoise.Behind(v.Say(w), noise, seed++))))).Order()];

    private static double Margin(VoiceParts parts, PcmAudio sound) => Heard(parts.Grammars, parts.Recogniser, sound).Margin ?? 0;

    private static Heard Heard(QuestionGrammars grammars, SpeechRecogniser recogniser, PcmAudio sound) =>
        recogniser.HearBetween(sound, grammars.Confirm, grammars.Accept, grammars.Reject);

    private static string At(List<double> sorted, int percent) => $"{sorted[Math.Min(sorted.Count - 1, sorted.Count * percent / 100)]:0.0}";
}
