using System.Collections.Concurrent;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Voice.Grammars;

/// <summary>
/// The grammar of each question, compiled from the lexicon and the fact: its numbers and units, or its choices, and the commands.
/// What a phrase means is said by the <see cref="Understander"/> alone: a choice it reads as something else is not listened for.
/// Safe for use by many at once.
/// </summary>
public sealed class QuestionGrammars
{
    private readonly ConcurrentDictionary<string, SpeechGrammar> compiled = new(StringComparer.Ordinal);
    private readonly LexiconPhrases lexicon;
    private readonly ListeningPlan plan;
    private readonly PronunciationDictionary sounds;
    private readonly Understander understander;
    private readonly NumberRules numbers;

    public QuestionGrammars(LexiconPhrases lexicon, ListeningPlan plan, PronunciationDictionary sounds, Understander understander)
    {
        (this.lexicon, this.plan, this.sounds, this.understander) = (lexicon, plan, sounds, understander);
        numbers = new(lexicon, sounds);
        Control = SpeechGrammar.Of("control", Heard(plan.Controls.Values.SelectMany(p => p).Concat(CommandPhrases("pause", "repeat"))));
        Command = SpeechGrammar.Of("command", Heard(plan.Controls.Values.Concat(plan.Commands.Values).SelectMany(p => p)));
        Accept = SpeechGrammar.Of("accept", Heard(plan.Confirm["accept"]));
        Reject = SpeechGrammar.Of("reject", Heard(plan.Confirm["reject"]));
        Confirm = Accept.Or("confirm", Reject).Or("confirm", Control).Or("confirm", SpeechGrammar.Of("", Heard(CommandPhrases("skip", "undo"))));
        Digits = new("digits", $"({numbers.Digit}+ [{Any(lexicon.NumberPart("point"))} {numbers.Digit}+] [{Any(plan.Digits["go"])}] | {Any(plan.Digits.Values.SelectMany(p => p))} | {Any(lexicon.NumberPart("minus").Take(2))} | {Control.Expansion})");
        Wake = SpeechGrammar.Of("wake", Heard(plan.Wake));
    }

    /// <summary>What works while the assistant speaks: stop, slower, faster, louder, wait, say again.</summary>
    public SpeechGrammar Control { get; }

    /// <summary>The commands alone, where nothing is asked.</summary>
    public SpeechGrammar Command { get; }

    /// <summary>The answers to a read-back, and their two halves, between which the sound must choose clearly.</summary>
    public SpeechGrammar Confirm { get; }

    public SpeechGrammar Accept { get; }

    public SpeechGrammar Reject { get; }

    /// <summary>A number digit by digit, ended by "go".</summary>
    public SpeechGrammar Digits { get; }

    public SpeechGrammar Wake { get; }

    /// <summary>Every word that any grammar can need, for the recogniser's dictionary.</summary>
    public IEnumerable<string> Vocabulary => Everything(UnitSystem.Us).Words.Concat(Everything(UnitSystem.Metric).Words).Concat(Confirm.Words).Concat(Digits.Words).Concat(Wake.Words).Distinct();

    /// <summary>The grammar of the question a reply asks; the commands alone where it asks for no fact.</summary>
    public SpeechGrammar For(Reply reply, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(reply);
        return reply.AskedFact is { } name && FactCatalogue.Find(name) is { } fact ? For(fact, reply.Units, units) : Command;
    }

    /// <param name="symbols">The units the question may be answered in, the site's default first; empty takes the default alone.</param>
    public SpeechGrammar For(Fact fact, IEnumerable<string> symbols, UnitSystem units)
    {
        var asked = UnitsOf(fact, [.. symbols], units);
        var name = $"{fact.Name}_{units}_{string.Join('_', asked.Select(u => new string([.. u.Symbol.Where(char.IsLetter)])))}".ToLowerInvariant();
        return compiled.GetOrAdd(name, _ => (fact.IsQuantity ? Numbers(name, fact, asked, units) : Choices(name, fact, units)).Or(name, Command));
    }

    /// <summary>The broad grammar for comparison: every number and unit, every choice and command, whatever was asked.</summary>
    public SpeechGrammar Everything(UnitSystem units) => compiled.GetOrAdd($"everything_{units}".ToLowerInvariant(), name =>
    {
        var quantities = FactCatalogue.All.Where(f => f.IsQuantity).DistinctBy(f => f.Kind).Select(f => Numbers(name, f, UnitsOf(f, [], units), units, wide: true).Expansion);
        var choices = FactCatalogue.All.Where(f => !f.IsQuantity).Select(f => Choices(name, f, units).Expansion);
        return new(name, "(" + string.Join(" | ", quantities.Concat(choices).Append(Command.Expansion)) + ")");
    });

    /// <summary>The numbers a fact is listened for in a unit, or null.</summary>
    public NumberSpan? SpanOf(Fact fact, UnitOfMeasure unit) => plan.SpanOf(fact, unit);

    /// <summary>Which of the voice's own words a phrase is (stop, slower, accept, reject, go, clear, wake), or null.</summary>
    public string? ControlOf(string phrase) =>
        plan.Controls.Concat(plan.Confirm).Concat(plan.Digits).FirstOrDefault(c => c.Value.Contains(phrase)).Key ?? (plan.Wake.Contains(phrase) ? "wake" : null);

    /// <summary>Which of the walk's commands a phrase is, or null.</summary>
    public string? CommandOf(string phrase) => plan.Commands.FirstOrDefault(c => c.Value.Contains(phrase)).Key;

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

    private SpeechGrammar Numbers(string name, Fact fact, UnitOfMeasure[] asked, UnitSystem units, bool wide = false)
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

        return new(name, "(" + string.Join(" | ", ways) + ")");
    }

    private SpeechGrammar Choices(string name, Fact fact, UnitSystem units)
    {
        var phrases = fact.Choices.SelectMany(choice => Heard(lexicon.Choice(fact, choice))
            .Where(p => p.Count(c => c == ' ') < plan.MostWords && ControlOf(p) is null or "accept" or "reject")
            .Where(p => ChoiceOf(fact, p, units) == choice)).ToList();
        return phrases.Count > 0 ? SpeechGrammar.Of(name, phrases) : Command with { Name = name };
    }

    private IEnumerable<string> CommandPhrases(params string[] names) => names.SelectMany(n => plan.Commands.GetValueOrDefault(n, []));

    private IEnumerable<string> Heard(IEnumerable<string> phrases) => phrases.Distinct().Where(sounds.CanBeHeard);

    private string Any(IEnumerable<string> phrases) => "(" + string.Join(" | ", Heard(phrases)) + ")";
}
