using System.Collections.Immutable;

namespace Assistant.Voice.Grammars;

/// <summary>One thing to listen for: a JSGF grammar, known to the recogniser by its name.</summary>
/// <param name="Free">What may be said freely, such as numbers, as a JSGF expansion; empty where only whole phrases are listened for.</param>
public sealed record SpeechGrammar(string Name, string Free)
{
    /// <summary>Whole phrases by what they mean, such as "choice:dirty" and "command:skip". No phrase means two things.</summary>
    public ImmutableSortedDictionary<string, ImmutableArray<string>> Meanings { get; private init; } = ImmutableSortedDictionary<string, ImmutableArray<string>>.Empty;

    /// <summary>True for one made for a single utterance: the recogniser forgets it afterwards.</summary>
    public bool IsPassing { get; init; }

    /// <summary>True where its name is waited for: so little else fits it that it need not fit as well.</summary>
    public bool IsName { get; init; }

    /// <summary>The right-hand side of the one public rule.</summary>
    public string Expansion => "(" + string.Join(" | ", Meanings.Values.SelectMany(p => p).Prepend(Free).Where(p => p.Length > 0)) + ")";

    /// <summary>The grammar as the recogniser takes it.</summary>
    public string Jsgf => $"#JSGF V1.0;\ngrammar {Name};\npublic <{Name}> = {Expansion};\n";

    /// <summary>Every word in it.</summary>
    public IEnumerable<string> Words => Expansion.Split([' ', '(', ')', '[', ']', '|', '+', '*'], StringSplitOptions.RemoveEmptyEntries).Distinct();

    public bool IsEmpty => Free.Length == 0 && Meanings.IsEmpty;

    public static SpeechGrammar Of(string name, params IEnumerable<(string Meaning, IEnumerable<string> Phrases)> meanings) => new SpeechGrammar(name, "").With(meanings);

    /// <summary>Adds phrases. One that means something already keeps its first meaning.</summary>
    public SpeechGrammar With(params IEnumerable<(string Meaning, IEnumerable<string> Phrases)> meanings)
    {
        var all = Meanings.ToBuilder();
        var taken = Meanings.Values.SelectMany(p => p).ToHashSet(StringComparer.Ordinal);
        foreach (var (meaning, phrases) in meanings)
        {
            var added = phrases.Where(taken.Add).ToList();
            if (added.Count > 0)
            {
                all[meaning] = [.. all.GetValueOrDefault(meaning, []), .. added];
            }
        }

        return this with { Meanings = all.ToImmutable() };
    }

    /// <summary>What a whole phrase means, or null for what was said freely.</summary>
    public string? MeaningOf(string phrase) => Meanings.FirstOrDefault(m => m.Value.Contains(phrase)).Key;

    /// <summary>All but the phrases of one meaning: what a sound must be told apart from before that meaning is acted on.</summary>
    public SpeechGrammar Without(string meaning) => this with { Name = Named("not", meaning), Meanings = Meanings.Remove(meaning) };

    /// <summary>Just the phrases of one meaning.</summary>
    public SpeechGrammar Only(string meaning) => Of(Named("is", meaning), (meaning, Meanings[meaning])) with { IsPassing = IsPassing, IsName = IsName };

    /// <summary>What answers the question, without the commands and controls that may be said besides.</summary>
    public SpeechGrammar Answers => this with { Name = $"{Name}_answers", Meanings = Meanings.RemoveRange(Meanings.Keys.Where(IsUnasked)) };

    /// <summary>Whether a meaning is a command or a control: nobody need have asked for it.</summary>
    public static bool IsUnasked(string meaning)
    {
        ArgumentNullException.ThrowIfNull(meaning);
        return meaning.StartsWith("command:", StringComparison.Ordinal) || meaning.StartsWith("control:", StringComparison.Ordinal);
    }

    /// <summary>Whether a meaning stands for something said of the plant or chosen on the visit, which is read back and acts only after a yes.</summary>
    public static bool IsValue(string meaning)
    {
        ArgumentNullException.ThrowIfNull(meaning);
        return meaning.StartsWith("choice:", StringComparison.Ordinal) || meaning.StartsWith(OfferedChoices.Option, StringComparison.Ordinal) || meaning.StartsWith(OfferedChoices.Leak, StringComparison.Ordinal);
    }

    private string Named(string how, string meaning) => $"{Name}_{how}_{new string([.. meaning.Select(c => char.IsLetterOrDigit(c) ? c : '_')])}";
}
