using System.Collections.Concurrent;
using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Voice.Grammars;

/// <summary>
/// The grammar of each question, compiled from the lexicon, the fact and the walk: its numbers and units, or its choices, and the commands.
/// What a phrase means is said by the <see cref="Understander"/> alone: a choice it reads as something else is not listened for.
/// Safe for use by many at once.
/// </summary>
public sealed class QuestionGrammars
{
    private static readonly string[] NumberParts = ["nought-between-digits", "point", "and", "articles", "minus"];

    // A list of more is forgotten before it has been said.
    private const int MostNumbered = 6;

    private readonly ConcurrentDictionary<string, SpeechGrammar> compiled = new(StringComparer.Ordinal);
    private readonly LexiconPhrases lexicon;
    private readonly ListeningPlan plan;
    private readonly PronunciationDictionary sounds;
    private readonly Understander understander;
    private readonly NumberRules numbers;
    private readonly RefrigerantRules refrigerants;
    private readonly OfferedChoices offered;

    public QuestionGrammars(LexiconPhrases lexicon, ListeningPlan plan, PronunciationDictionary sounds, Understander understander, WalkLibrary walks)
    {
        (this.lexicon, this.plan, this.sounds, this.understander) = (lexicon, plan, sounds, understander);
        numbers = new(lexicon, sounds);
        refrigerants = new(lexicon, sounds);
        offered = new(plan, lexicon, walks, sounds);
        Control = SpeechGrammar.Of("control", [.. Controls, .. Commands("pause", "repeat", "emergency")]);
        Command = SpeechGrammar.Of("command", [.. Controls, .. Commands([.. plan.Commands.Keys])]);
        Confirm = SpeechGrammar.Of("confirm", [("accept", Heard(plan.Confirm["accept"])), ("reject", Heard(plan.Confirm["reject"]))])
            .With([.. Controls, .. Commands("pause", "resume", "repeat", "emergency", "skip")]);
        Wake = SpeechGrammar.Of("wake", [("wake", Heard(plan.Wake)), .. Commands("emergency")]) with { IsName = true };
    }

    /// <summary>What works while the assistant speaks: stop, slower, faster, louder, wait, say again. Nothing in it can store a value.</summary>
    public SpeechGrammar Control { get; }

    /// <summary>The commands alone, where nothing is asked.</summary>
    public SpeechGrammar Command { get; }

    /// <summary>The answers to a read-back: "accept", "reject", and a few commands.</summary>
    public SpeechGrammar Confirm { get; }

    /// <summary>What ends the assistant's sleep between two calls on it.</summary>
    public SpeechGrammar Wake { get; }

    /// <summary>Every word that any grammar can need, for the recogniser's dictionary.</summary>
    public IEnumerable<string> Vocabulary => new[] { UnitSystem.Us, UnitSystem.Metric }.SelectMany(u => new[] { Everything(u).Words, For(FactCatalogue.Refrigerant, [], u).Words, Spelled(FactCatalogue.SuctionPressure, UnitOfMeasure.Psig).Words })
        .SelectMany(w => w).Concat(Confirm.Words).Concat(Wake.Words).Concat(plan.Steps.Values.SelectMany(p => Heard(p)).SelectMany(p => p.Split(' '))).Append(plan.ByNumber).Concat(offered.Words.Where(sounds.Knows)).Distinct();

    /// <summary>The grammar of the question a reply asks: the fact's, with what else is offered; what is offered alone where it asks for no fact; and the commands.</summary>
    public SpeechGrammar For(Reply reply, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(reply);
        var fact = reply.AskedFact is { } asked ? FactCatalogue.Find(asked) : null;
        if (fact is null && reply.Choices.IsEmpty)
        {
            return Command;
        }

        // The same words mean another value or person the next time: such a grammar is made for one utterance.
        var name = Named(fact is null ? $"at_{reply.Walk?.Walk}_{reply.Walk?.Stop}" : For(fact, reply.Units, units).Name, string.Join('_', reply.Choices));
        return fact is not null && reply.Choices.Any(c => c.Any(char.IsDigit)) ? Compiled(name, reply, fact, units) with { IsPassing = true }
            : compiled.GetOrAdd(name, _ => Compiled(name, reply, fact, units));
    }

    // What would be taken for one of the options is none of the commands here, whoever says it.
    private SpeechGrammar Compiled(string name, Reply reply, Fact? fact, UnitSystem units) => fact is not null
        ? (For(fact, reply.Units, units) with { Name = name }).With(offered.Of(reply, fact))
        : SpeechGrammar.Of(name, [.. offered.Of(reply, null), .. offered.Leaks(reply)])
            .With(Meanings(Command).Where(c => !SpeechGrammar.IsUnasked(c.Meaning) || !offered.IsTaken(reply, ConfirmedPhrase(c.Meaning) ?? c.Meaning[(c.Meaning.IndexOf(':', StringComparison.Ordinal) + 1)..])));

    /// <param name="symbols">The units the question may be answered in, the site's default first; empty takes the default alone.</param>
    public SpeechGrammar For(Fact fact, IEnumerable<string> symbols, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(fact);
        var asked = UnitsOf(fact, [.. symbols], units);
        var name = $"{fact.Name}_{units}_{string.Join('_', asked.Select(u => new string([.. u.Symbol.Where(char.IsLetter)])))}".ToLowerInvariant();
        return compiled.GetOrAdd(name, _ => Answers(name, fact, asked, units).With(Meanings(Command)));
    }

    /// <summary>A number digit by digit, with its unit if it is said, ended by "go".</summary>
    public SpeechGrammar Spelled(Fact fact, UnitOfMeasure unit)
    {
        ArgumentNullException.ThrowIfNull(fact);
        ArgumentNullException.ThrowIfNull(unit);
        var name = $"spelled_{(plan.SpanOf(fact, unit)?.From < 0 ? "signed" : "plain")}";
        return compiled.GetOrAdd(name, _ =>
        {
            var sign = name == "spelled_signed" ? $"[{Any(lexicon.NumberPart("minus").Take(2))}] " : "";
            var digits = $"{numbers.Digit}+ [{Any(lexicon.NumberPart("point").Take(1))} {numbers.Digit}+] [{Any(plan.Digits["go"])}]";
            return new SpeechGrammar(name, $"{sign}{digits}").With(
                [("digits:go", Heard(plan.Digits["go"])), ("digits:clear", Heard(plan.Digits["clear"])), .. Controls, .. Commands("pause", "resume", "repeat", "skip", "emergency")]);
        });
    }

    /// <summary>A choice by its number as it was offered aloud, or by its own words; and few commands, since misses went before.</summary>
    public SpeechGrammar ByNumber(Fact fact, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(fact);
        var name = $"by_number_{fact.Name}_{units}".ToLowerInvariant();
        return compiled.GetOrAdd(name, _ => SpeechGrammar.Of(name, Numbered(fact).Select(n => ($"choice:{n.Choice}", (IEnumerable<string>)[n.Words])))
            .With(Meanings(Choices(name, fact, units))).With([.. Controls, .. Commands("more", "pause", "resume", "repeat", "skip", "emergency")]));
    }

    /// <summary>The number of each of a fact's choices: "number one", "number two". None where they are too many to be listened to.</summary>
    public IReadOnlyList<(string Words, string Choice)> Numbered(Fact fact)
    {
        ArgumentNullException.ThrowIfNull(fact);
        return fact.Choices.Length is > 1 and <= MostNumbered ? [.. fact.Choices.Select((c, i) => ($"{plan.ByNumber} {lexicon.Cardinals[i + 1]}", c))] : [];
    }

    /// <summary>The same for the options of a walk's own choice.</summary>
    public IReadOnlyList<(string Words, string Choice)> Numbered(Reply reply)
    {
        ArgumentNullException.ThrowIfNull(reply);
        return offered.IsChoosing(reply) && reply.Choices.Length <= MostNumbered ? [.. reply.Choices.Select((c, i) => ($"{plan.ByNumber} {lexicon.Cardinals[i + 1]}", c))] : [];
    }

    /// <summary>An option of a walk by its number, or by its own words.</summary>
    public SpeechGrammar ByNumber(Reply reply)
    {
        ArgumentNullException.ThrowIfNull(reply);
        var name = Named($"by_number_{reply.Walk?.Walk}_{reply.Walk?.Stop}", "");
        return compiled.GetOrAdd(name, _ => SpeechGrammar.Of(name, Numbered(reply).Select(n => (OfferedChoices.Option + n.Choice, (IEnumerable<string>)[n.Words])))
            .With(offered.Of(reply, null)).With([.. Controls, .. Commands("more", "pause", "resume", "repeat", "skip", "emergency")]));
    }

    /// <summary>What is read back and sent of a command that acts only after a yes; null for every other meaning.</summary>
    public string? ConfirmedPhrase(string meaning)
    {
        ArgumentNullException.ThrowIfNull(meaning);
        return plan.Confirmed.FirstOrDefault(c => meaning == "command:" + c) is { } name ? Heard(plan.Commands[name]).First() : null;
    }

    /// <summary>What the conversation is told of a leak at that place.</summary>
    public string LeakAt(string place) => $"{plan.Leak[0]} {place}";

    /// <summary>The words offered aloud for a step's answer.</summary>
    public IReadOnlyList<string> OfferedFor(string step) => plan.Steps.TryGetValue(step, out var said) ? [.. Heard(said).Take(2)] : [];

    /// <summary>The words offered aloud for one of a reply's choices: two of a step's, otherwise its own.</summary>
    public IReadOnlyList<string> OfferedFor(Reply reply, string choice) =>
        offered.IsChoosing(reply) || OfferedFor(choice) is not { Count: > 0 } step ? [choice] : step;

    /// <summary>The two numbers that sound alike, in words and digit by digit.</summary>
    public SpeechGrammar Pair(string first, string second) => (SpeechGrammar.Of(
        "pair", ("pair:first", Heard([first, SpokenDigits(first)])), ("pair:second", Heard([second, SpokenDigits(second)])), ("reject", Heard(plan.Confirm["reject"])))
        with { IsPassing = true }).With([.. Controls, .. Commands("pause", "resume", "repeat", "skip", "emergency")]);

    /// <summary>A number's words alone.</summary>
    public static SpeechGrammar Just(string words) => new("just", words) { IsPassing = true };

    /// <summary>The broad grammar for comparison: every number and unit, every choice and command, whatever was asked.</summary>
    public SpeechGrammar Everything(UnitSystem units) => compiled.GetOrAdd($"everything_{units}".ToLowerInvariant(), name =>
    {
        var quantities = FactCatalogue.All.Where(f => f.IsQuantity).DistinctBy(f => f.Kind).Select(f => Numbers(f, UnitsOf(f, [], units), units, wide: true));
        var choices = FactCatalogue.All.Where(f => !f.IsQuantity).SelectMany(f => Meanings(Choices(name, f, units)));
        return new SpeechGrammar(name, string.Join(" | ", quantities)).With(Meanings(Command)).With(choices);
    });

    /// <summary>The numbers a fact is listened for in a unit, or null.</summary>
    public NumberSpan? SpanOf(Fact fact, UnitOfMeasure unit) => plan.SpanOf(fact, unit);

    /// <summary>The unit a bare number is in: the first of those the question names, otherwise the site's own.</summary>
    public static UnitOfMeasure UnitOf(Fact fact, IEnumerable<string> symbols, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(fact);
        return UnitsOf(fact, [.. symbols], units)[0];
    }

    /// <summary>Whether a word belongs to a number, and not to its unit.</summary>
    public bool IsNumberWord(string word) =>
        lexicon.Cardinals.ContainsValue(word) || NumberParts.Any(part => lexicon.NumberPart(part).Contains(word));

    /// <summary>Whether digits were ended by "go" in the same breath.</summary>
    public bool EndsWithGo(string words) => plan.Digits["go"].Any(go => words == go || words.EndsWith(" " + go, StringComparison.Ordinal));

    /// <summary>The choice a phrase names where the fact was asked: its own word, or what the understanding makes of it; otherwise null.</summary>
    public string? ChoiceOf(Fact fact, string phrase, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(fact);
        return fact.Choices.FirstOrDefault(c => c.Replace('-', ' ') == phrase)
            ?? (understander.Understand(phrase, new UnderstandingContext(fact, units)).Observations is [var only] && only.Fact == fact ? only.Value : null);
    }

    private static UnitOfMeasure[] UnitsOf(Fact fact, string[] symbols, UnitSystem units)
    {
        var possible = UnitOfMeasure.All.Where(u => fact.Kind.ToString() == u.Dimension.ToString() || (fact.Kind == FactKind.TemperatureOrPressure && u.Dimension is Dimension.Temperature or Dimension.Pressure));
        if (symbols.Length > 0)
        {
            return [.. symbols.Select(s => possible.FirstOrDefault(u => u.Symbol == s)).OfType<UnitOfMeasure>()];
        }

        string[] usual = units == UnitSystem.Us
            ? ["psig", "inHg vacuum", "degF", "lb", "oz", "micron", "A", "V", "ft", "ft3", "min", "h"]
            : ["bar", "kPa", "degC", "K", "kg", "g", "Pa", "mbar", "A", "V", "m", "l", "min", "h"];
        return [.. possible.Where(u => usual.Contains(u.Symbol))];
    }

    private SpeechGrammar Answers(string name, Fact fact, UnitOfMeasure[] asked, UnitSystem units) =>
        fact == FactCatalogue.Refrigerant ? new(name, refrigerants.Expansion)
        : fact.IsQuantity ? new(name, Numbers(fact, asked, units))
        : Choices(name, fact, units);

    private string Numbers(Fact fact, UnitOfMeasure[] asked, UnitSystem units, bool wide = false)
    {
        var ways = new List<string>();
        foreach (var unit in asked)
        {
            if ((wide ? plan.KindSpan(unit) : plan.SpanOf(fact, unit)) is not { } span)
            {
                continue;
            }

            var words = Heard(lexicon.Unit(unit)).Where(w => w.Split(' ') is var said && said.Length <= plan.MostWords && said[^1] != "of").ToList();
            if (unit == (units == UnitSystem.Us ? UnitOfMeasure.Fahrenheit : UnitOfMeasure.Celsius) || unit.Dimension == Dimension.TemperatureDifference)
            {
                words.AddRange(Heard(lexicon.Degrees));
            }

            // A bare number is the site's own unit; the others must be said.
            var optional = unit == asked[0];
            if (optional || words.Count > 0)
            {
                ways.Add($"{numbers.For(span)} {(words.Count == 0 ? "" : optional ? $"[{string.Join(" | ", words)}]" : $"({string.Join(" | ", words)})")}");
            }
        }

        return string.Join(" | ", ways);
    }

    private SpeechGrammar Choices(string name, Fact fact, UnitSystem units) => SpeechGrammar.Of(name, fact.Choices.Select(choice => ($"choice:{choice}",
        Heard(lexicon.Choice(fact, choice)).Where(p => p.Count(c => c == ' ') < plan.MostWords && ChoiceOf(fact, p, units) == choice))));

    private IEnumerable<(string Meaning, IEnumerable<string> Phrases)> Controls => plan.Controls.Select(c => ($"control:{c.Key}", Heard(c.Value)));

    private IEnumerable<(string Meaning, IEnumerable<string> Phrases)> Commands(params IEnumerable<string> names) =>
        names.Where(plan.Commands.ContainsKey).Select(n => ($"command:{n}", Heard(plan.Commands[n])));

    private static IEnumerable<(string Meaning, IEnumerable<string> Phrases)> Meanings(SpeechGrammar grammar) => grammar.Meanings.Select(m => (m.Key, m.Value.AsEnumerable()));

    // "thirteen" digit by digit is "one three": the two that sound alike as words do not as digits.
    private string SpokenDigits(string words) => understander.Understand(words, new UnderstandingContext(FactCatalogue.SuctionPressure, UnitSystem.Us)).Readings is [var only]
        ? string.Join(' ', only.Value.ToString("0.###", CultureInfo.InvariantCulture).Select(c => c == '.' ? lexicon.NumberPart("point").First() : lexicon.Cardinals[c - '0']))
        : "";

    private IEnumerable<string> Heard(IEnumerable<string> phrases) => phrases.Distinct().Where(sounds.CanBeHeard);

    private static string Named(string what, string with) => new([.. $"{what}_{with}".ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '_')]);

    private string Any(IEnumerable<string> phrases) => "(" + string.Join(" | ", Heard(phrases)) + ")";
}
