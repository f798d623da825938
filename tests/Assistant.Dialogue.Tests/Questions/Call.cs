using System.Collections.Immutable;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Questions;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Questions;

/// <summary>A question put to the answerer as understanding hands it over, with the phrases the product ships.</summary>
internal sealed record Call(string Question)
{
    public static PhraseBook Phrases { get; } = PhraseBook.Load(
        Directory.GetFiles(Path.Combine(Root(), "dialogs", "phrases"), "*.yaml").Order(StringComparer.Ordinal).Select(p => new DialogFile(p, File.ReadAllText(p))));

    public string? Refrigerant { get; init; }

    public UnitSystem Units { get; init; } = UnitSystem.Us;

    public Fact? About { get; init; }

    public UnitOfMeasure? To { get; init; }

    public ImmutableArray<QuestionNumber> Numbers { get; init; } = [];

    public ImmutableArray<Reading> Statements { get; init; } = [];

    public FactSet Known { get; init; } = FactSet.Empty;

    public VisitCourse Course { get; init; } = VisitCourse.None;

    public Call With(double value, UnitOfMeasure? unit, Fact? fact = null) => this with { Numbers = Numbers.Add(new(value, unit, fact)) };

    public Call Knowing(Fact fact, double value, UnitOfMeasure unit) => this with { Known = Known.With(new Reading(fact, value, unit)) };

    public Call Knowing(Fact fact, string word) => this with { Known = Known.With(new Observation(fact, word)) };

    public Answer Answered() => new QuestionAnswerer(Phrases).Answer(
        new(Intent.Question, null, Question, Statements, [], null, new(Refrigerant, Numbers, To) { About = About }), Known, Units, Course)
        ?? throw new InvalidOperationException(Question);

    public string Said() => Answered().Say.Full;

    public string Because() => string.Join(' ', Answered().Because.Select(p => p.Full));

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Assistant.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("Assistant.sln is not above the tests");
        }

        return folder.FullName;
    }
}
