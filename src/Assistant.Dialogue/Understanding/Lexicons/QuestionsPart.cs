using System.Collections.Immutable;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding.Text;
using Assistant.Trade;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>A question and one set of topics that make it.</summary>
/// <param name="WithoutOpener">Taken even where no word opens a question.</param>
internal sealed record QuestionRule(string Question, ImmutableArray<int> Topics, bool WithoutOpener);

/// <summary>Reads questions.yaml: what opens a question, what it can be about, and which topics together are which question.</summary>
internal sealed class QuestionsPart(LexiconFile file)
{
    /// <summary>Topics that the program finds itself, in this order before those of the file.</summary>
    public static readonly ImmutableArray<string> Found = ["Pressure", "Temperature", "Number", "Refrigerant", "VacuumAsked", "TestAsked", "Convertible", "Fact", "Suspect"];

    private readonly List<string> topicNames = [.. Found];

    public PhraseTable<int> Topics { get; } = new();

    /// <summary>True for an opener that makes a question even where no topic is known.</summary>
    public PhraseTable<bool> Openers { get; } = new();

    public List<QuestionRule> Rules { get; } = [];

    /// <summary>What a question is after, by its topic; the first that is there counts.</summary>
    public List<(int Topic, Fact Fact)> About { get; } = [];

    /// <summary>The faults that a topic stands for, by the topic.</summary>
    public List<(int Topic, ImmutableArray<FaultCode> Faults)> Suspects { get; } = [];

    public void Read()
    {
        file.AllowOnly("openers", "topics", "about", "suspects", "questions");
        if (DialogYaml.Field(file.Root, "openers") is YamlMappingNode openers)
        {
            file.AllowOnly(openers, "openers", "strong", "weak");
            foreach (var field in new[] { "strong", "weak" })
            {
                foreach (var (phrase, _, _) in file.Phrases(openers, "openers", field))
                {
                    Openers.Add(phrase, field == "strong");
                }
            }
        }

        foreach (var (name, _, entry) in file.Entries("topics"))
        {
            topicNames.Add(name);
            foreach (var (phrase, _, _) in file.Phrases(entry, name))
            {
                Topics.Add(phrase, topicNames.Count - 1);
            }
        }

        foreach (var (_, at, entry) in file.Entries("about"))
        {
            ReadAbout(at, entry);
        }

        foreach (var (_, at, entry) in file.Entries("suspects"))
        {
            ReadSuspect(at, entry);
        }

        foreach (var map in file.Maps("questions"))
        {
            ReadQuestion(map);
        }
    }

    private void ReadAbout(YamlNode at, YamlNode entry)
    {
        if (at is YamlScalarNode topic && entry is YamlScalarNode { Value: { } name } && FactCatalogue.Find(name) is { } fact)
        {
            About.Add((TopicOf(topic, "about"), fact));
        }
        else
        {
            file.Report(DefectKind.UnknownLink, entry, "about", $"no fact '{entry}'");
        }
    }

    private void ReadSuspect(YamlNode at, YamlNode entry)
    {
        var faults = (entry as YamlSequenceNode ?? []).OfType<YamlScalarNode>().Select(f => Codes.FindFault(f.Value ?? "")).ToList();
        if (at is YamlScalarNode topic && faults.Count > 0 && faults.TrueForAll(f => f is not null))
        {
            Suspects.Add((TopicOf(topic, "suspects"), [.. faults.OfType<FaultCode>()]));
        }
        else
        {
            file.Report(DefectKind.UnknownLink, entry, "suspects", $"no list of faults '{entry}'");
        }
    }

    /// <summary>True for a word of how a reading is taken: "put", "probe".</summary>
    public bool IsOfTaking(IReadOnlyList<Token> tokens, int at) =>
        Topics.LongestAt(tokens, at, out var topics) > 0 && topics.Any(t => topicNames[t] is "take" or "instrument");

    /// <summary>Whether these topics of the file could be a question that no word opens, if the program finds the rest.</summary>
    public bool CouldBeAsked(HashSet<int> topics)
    {
        foreach (var rule in Rules)
        {
            if (rule.WithoutOpener && rule.Topics.Any(t => t >= Found.Length) && rule.Topics.All(t => t < Found.Length || topics.Contains(t)))
            {
                return true;
            }
        }

        return false;
    }

    private void ReadQuestion(YamlMappingNode map)
    {
        var question = file.Text(map, "questions", "question") ?? "";
        file.AllowOnly(map, question, "question", "when", "without-opener");
        if (question.Length == 0 || DialogYaml.Field(map, "when") is not YamlSequenceNode)
        {
            file.Report(DefectKind.MissingField, map, question, "a question names itself and when it is asked: question, when");
            return;
        }

        foreach (var field in new[] { "when", "without-opener" })
        {
            foreach (var line in (DialogYaml.Field(map, field) as YamlSequenceNode ?? []).OfType<YamlSequenceNode>())
            {
                var topics = line.OfType<YamlScalarNode>().Select(t => TopicOf(t, question)).ToImmutableArray();
                Rules.Add(new(question, topics, field == "without-opener"));
            }
        }
    }

    private int TopicOf(YamlScalarNode topic, string question)
    {
        var index = topicNames.IndexOf(topic.Value ?? "");
        if (index < 0)
        {
            file.Report(DefectKind.UnknownLink, topic, question, $"no topic '{topic.Value}'");
        }

        return index;
    }
}
