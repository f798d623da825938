using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Text;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>The question in a message and where it stands.</summary>
/// <param name="Question">Null for a question about something else.</param>
/// <param name="Start">Its first token; what stands before is told, not asked.</param>
internal readonly record struct FoundQuestion(string? Question, int Start, int End);

/// <summary>Finds the question in a message: by what opens it, and by what it is about.</summary>
internal sealed class QuestionReader(Lexicon lexicon)
{
    private readonly QuestionArgumentReader arguments = new(lexicon);

    public FoundQuestion? Find(Message message, Fact? expected)
    {
        FoundQuestion? unknown = null;
        var vacuum = expected == FactCatalogue.VacuumLevel || SpeaksOfVacuum(message.Tokens);
        for (var start = 0; start < message.Tokens.Count;)
        {
            var end = start;
            while (end < message.Tokens.Count && !message.Tokens[end].EndsSentence)
            {
                end++;
            }

            if (end > start && InSentence(message, start, end, expected, vacuum) is { } found)
            {
                if (found.Question is not null)
                {
                    return found;
                }

                unknown ??= found;
            }

            start = end + 1;
        }

        return unknown;
    }

    private FoundQuestion? InSentence(Message message, int start, int end, Fact? expected, bool vacuum)
    {
        var marked = end < message.Tokens.Count && message.Tokens[end].Kind == TokenKind.Question;
        FoundQuestion? unknown = null;
        for (var at = start; at < end; at++)
        {
            if (at > start && !message.Tokens[at - 1].EndsClause && !OpensAfterAnd(message.Tokens, at))
            {
                continue;
            }

            var opener = Opener(message.Tokens, at, end);
            if (opener is null)
            {
                continue;
            }

            if (Match(message, at, end, expected, vacuum, opened: true) is { } question)
            {
                return new(question, at, end);
            }

            if (opener is true || (marked && at == start))
            {
                unknown ??= new(null, at, end);
            }
        }

        if (unknown is null && Match(message, start, end, expected, vacuum, opened: marked) is { } bare)
        {
            return new(bare, start, end);
        }

        return unknown;
    }

    // "suction is 22 and what should it be".
    private bool OpensAfterAnd(IReadOnlyList<Token> tokens, int at) =>
        lexicon.Numbers.Vocabulary.Is(tokens[at - 1], Numbers.NumberPart.And) && lexicon.Questions.Openers.LongestAt(tokens, at, out var strong) > 0 && strong[0];

    // True where it opens a question whatever follows, false where only with a known topic; politeness before it is passed over.
    private bool? Opener(IReadOnlyList<Token> tokens, int at, int end)
    {
        while (at < end)
        {
            if (lexicon.Questions.Openers.LongestAt(tokens, at, out var strong) > 0)
            {
                return strong[0];
            }

            var polite = lexicon.Commands.PolitePhrases.LongestAt(tokens, at, out _);
            if (polite == 0)
            {
                return null;
            }

            at += polite;
        }

        return null;
    }

    private string? Match(Message message, int start, int end, Fact? expected, bool vacuum, bool opened)
    {
        var topics = new HashSet<int>();
        for (var at = start; at < end; at++)
        {
            if (lexicon.Questions.Topics.LongestAt(message.Tokens, at, out var found) > 0)
            {
                topics.UnionWith(found);
            }
        }

        if (!opened && !MayConvert(start, end) && !lexicon.Questions.CouldBeAsked(topics))
        {
            return null;
        }

        arguments.AddTopics(message, start, end, topics);
        Add(topics, "Suspect", lexicon.Questions.Suspects.Exists(s => topics.Contains(s.Topic)));
        Add(topics, "VacuumAsked", vacuum);
        Add(topics, "TestAsked", expected == FactCatalogue.TestPressure || expected == FactCatalogue.StandingPressure);
        foreach (var rule in lexicon.Questions.Rules)
        {
            if ((opened || rule.WithoutOpener) && rule.Topics.All(topics.Contains))
            {
                return rule.Question;
            }
        }

        return null;
    }

    // A conversion has at least a number and two units.
    private static bool MayConvert(int start, int end) => end - start is >= 4 and <= 8;

    private bool SpeaksOfVacuum(IReadOnlyList<Token> tokens)
    {
        for (var at = 0; at < tokens.Count; at++)
        {
            if (lexicon.Units.Units.LongestAt(tokens, at, out var units) > 0 && units.Any(u => !u.Everyday && u.Unit?.Dimension == Dimension.Vacuum))
            {
                return true;
            }
        }

        return false;
    }

    private static void Add(HashSet<int> topics, string name, bool holds)
    {
        if (holds)
        {
            topics.Add(QuestionsPart.Found.IndexOf(name));
        }
    }

    /// <summary>The numbers and names the question brings with it.</summary>
    public QuestionArguments Arguments(Message message, FoundQuestion question, UnitSystem site) =>
        arguments.Read(message, question, site);
}
