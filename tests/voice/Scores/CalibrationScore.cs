using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Hearing;
using Assistant.Voice.Scoring.Kit;

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

        Console.WriteLine("\nCommands nobody asked for: fit and margin of those said (lowest, 5th, 50th percentile), and of answers heard as one (50th percentile, highest).\n");
        Console.WriteLine("| noise | commands: fit | margin | answers heard as one: fit | margin | how many |\n| --- | --- | --- | --- | --- | --- |");
        foreach (var noise in Rooms.All)
        {
            var (said, mistaken) = (Commands(parts, noise).ToList(), Mistaken(parts, noise).ToList());
            List<double> Fits(List<Heard> heard) => [.. heard.Select(h => h.Fit).Order()];
            List<double> Gaps(List<Heard> heard) => [.. heard.Select(h => h.Margin ?? 0).Order()];
            Console.WriteLine($"| {Rooms.Name(noise)} | {At(Fits(said), 0)} {At(Fits(said), 5)} {At(Fits(said), 50)} | {At(Gaps(said), 0)} {At(Gaps(said), 5)} {At(Gaps(said), 50)} | " +
                $"{At(Fits(mistaken), 50)} {At(Fits(mistaken), 100)} | {At(Gaps(mistaken), 50)} {At(Gaps(mistaken), 100)} | {mistaken.Count} |");
        }

        Ends(parts);
        Console.WriteLine("\nChoices and commands, and the numbers that sound alike: margin of those heard right (5th, 50th percentile), of those heard wrong (50th, highest), and how many were wrong. Fit of the words: 5th percentile.\n");
        Console.WriteLine("| noise | words right | words wrong | wrong | fit | pairs right | pairs wrong | wrong |\n| --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (var noise in Rooms.All)
        {
            var (words, pairs) = (Words(parts, noise).ToList(), Pairs(parts, noise).ToList());
            Console.WriteLine($"| {Rooms.Name(noise)} | {Sides(words)} | {At([.. words.Select(w => w.Heard.Fit).Order()], 5)} | {Sides(pairs)} |");
        }

        Console.WriteLine();
    }

    // Which word ends digits best: it must not sound like one of them.
    private static void Ends(VoiceParts parts)
    {
        string[] digits = ["eight eight", "one one seven", "five zero", "two six", "three four eight", "nine two"], ends = ["go", "go ahead", "done"];
        Console.WriteLine($"\nDigits and the word that ends them, heard exactly, of {digits.Length * SyntheticVoice.ForCalibration.Count}.\n");
        Console.WriteLine($"| noise | {string.Join(" | ", ends)} |\n| --- | {string.Join(" | ", ends.Select(_ => "---"))} |");
        foreach (var noise in Rooms.All)
        {
            var seed = 7500;
            var grammar = parts.Grammars.Spelled(FactCatalogue.DischargePressure, UnitOfMeasure.Psig);
            Console.WriteLine($"| {Rooms.Name(noise)} | {string.Join(" | ", ends.Select(end => SyntheticVoice.ForCalibration.Sum(v => digits.Count(d => parts.Recogniser.Hear(FanNoise.Behind(v.Say($"{d} {end}"), noise, seed++), grammar).Words == $"{d} {end}"))))} |");
        }
    }

    private static string Sides(List<(bool Right, Heard Heard)> heard)
    {
        List<double> Of(bool right) => [.. heard.Where(h => h.Right == right && h.Heard.Margin is not null).Select(h => h.Heard.Margin!.Value).Order()];
        var (right, wrong) = (Of(true), Of(false));
        return $"{At(right, 5)} {At(right, 50)} | {At(wrong, 50)} {At(wrong, 100)} | {heard.Count(h => !h.Right)} of {heard.Count}";
    }

    private static IEnumerable<(bool Right, Heard Heard)> Words(VoiceParts parts, double noise)
    {
        var seed = 7000;
        foreach (var voice in SyntheticVoice.ForCalibration)
        {
            foreach (var fact in FactCatalogue.All.Where(f => !f.IsQuantity && f.Choices.Length > 0).DistinctBy(f => string.Join(',', f.Choices)))
            {
                foreach (var word in fact.Choices.Append("skip").Append("why"))
                {
                    var state = parts.Dialogue.Start(Phrases.Question(fact.Name), UnitSystem.Us).State;
                    var heard = Heard(parts, state, voice, word.Replace('-', ' '), noise, seed++);
                    var meaning = heard.Words is { } words ? parts.Dialogue.Grammar(state).MeaningOf(words) : null;
                    yield return (meaning == "choice:" + word || meaning == "command:" + word, heard);
                }
            }
        }
    }

    private static IEnumerable<Heard> Commands(VoiceParts parts, double noise)
    {
        var seed = 9000;
        foreach (var (voice, command) in SyntheticVoice.ForCalibration.SelectMany(v => new[] { "why", "undo", "scratch that", "status", "where are we", "help", "help me out", "more", "tell me more", "all done", "skip", "skip it", "finished", "who is here", "leave the visit", "hand over", "just watching" }, (v, c) => (v, c)))
        {
            var state = parts.Dialogue.Start(Phrases.Question("discharge_pressure"), UnitSystem.Us).State;
            var heard = Heard(parts, state, voice, command, noise, seed++);
            if (heard.Accepted is { } words && parts.Dialogue.Grammar(state).MeaningOf(words) is { } meaning && meaning == parts.Dialogue.Grammar(state).MeaningOf(command))
            {
                yield return heard;
            }
        }
    }

    // Answers of every kind, with what was heard where a command was.
    private static IEnumerable<Heard> Mistaken(VoiceParts parts, double noise)
    {
        var seed = 9500;
        var choices = FactCatalogue.All.Where(f => !f.IsQuantity && f.Choices.Length > 0).SelectMany(f => f.Choices, (f, c) => (f.Name, Words: c.Replace('-', ' ')));
        foreach (var (voice, answer) in SyntheticVoice.ForCalibration.SelectMany(v => choices.Concat(Phrases.ForCalibration.Select(a => (a.Fact, a.Words))), (v, a) => (v, a)))
        {
            var state = parts.Dialogue.Start(Phrases.Question(answer.Item1), UnitSystem.Us).State;
            var heard = Heard(parts, state, voice, answer.Words, noise, seed++);
            if (heard.Accepted is { } words && parts.Dialogue.Grammar(state).MeaningOf(words) is { } meaning && (meaning.StartsWith("command:", StringComparison.Ordinal) || meaning.StartsWith("control:", StringComparison.Ordinal)))
            {
                Console.Error.WriteLine($"{voice.Name} {Rooms.Name(noise)}: {answer.Words} > {words} ({heard.Fit:0.0}, {heard.Margin:0.0})");
                yield return heard;
            }
        }
    }

    private static IEnumerable<(bool Right, Heard Heard)> Pairs(VoiceParts parts, double noise)
    {
        var seed = 8000;
        foreach (var voice in SyntheticVoice.ForCalibration)
        {
            foreach (var number in new[] { "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety" })
            {
                foreach (var words in new[] { number, "one " + number + " p s i", "two " + number + " pounds" })
                {
                    var state = parts.Dialogue.Start(Phrases.Question("discharge_pressure"), UnitSystem.Us).State;
                    var heard = Heard(parts, state, voice, words, noise, seed++);
                    yield return (heard.Words?.Replace("psi", "p s i", StringComparison.Ordinal) == words, heard);
                }
            }
        }
    }

    private static Heard Heard(VoiceParts parts, VoiceState state, SyntheticVoice voice, string words, double noise, int seed) =>
        parts.Recogniser.Hear(FanNoise.Behind(voice.Say(words), noise, seed), parts.Dialogue.Grammar(state), heard => parts.Dialogue.Rivals(state, heard));

    private static List<double> Margins(VoiceParts parts, string[] words, double noise, int seed)
    {
        // By how much the best yes fits better than the best no, whichever was said.
        var (yes, no) = (parts.Grammars.Confirm.Only("accept"), parts.Grammars.Confirm.Only("reject"));
        return [.. SyntheticVoice.ForCalibration.SelectMany(v => words.SelectMany(w => Enumerable.Range(0, 2).Select(_ =>
            parts.Recogniser.Hear(FanNoise.Behind(v.Say(w), noise, seed++), yes, _ => no).Margin ?? double.NegativeInfinity))).Order()];
    }

    private static string At(List<double> sorted, int percent) => sorted.Count == 0 ? "-" : $"{sorted[Math.Min(sorted.Count - 1, sorted.Count * percent / 100)]:0.0}";
}
