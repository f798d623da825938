using System.Collections.Immutable;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Text;
using Assistant.Dialogue.Understanding.Units;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Reads what a question brings with it: refrigerant, numbers with units and facts, the unit asked for.</summary>
internal sealed class QuestionArgumentReader(Lexicon lexicon)
{
    private static readonly ImmutableArray<string> MassQuestions = ["leak-rate", "cylinder", "winter-charge"];
    private readonly ItemReader items = new(lexicon);

    /// <summary>Adds the topics that only the program can see: what the numbers measure, a refrigerant, a conversion.</summary>
    public void AddTopics(Message message, int start, int end, HashSet<int> topics)
    {
        var read = items.Read(message, start, end, null);
        void Add(string name) => topics.Add(QuestionsPart.Found.IndexOf(name));
        foreach (var item in read)
        {
            if (item.Refrigerant is not null)
            {
                Add("Refrigerant");
            }

            if (item.Facts.Count > 0)
            {
                Add("Fact");
            }

            if (item.Number is { } number)
            {
                Add("Number");
                foreach (var unit in number.Units)
                {
                    var dimension = unit.Unit?.Dimension ?? Dimension.Temperature;
                    if (!unit.Everyday && dimension is Dimension.Pressure or Dimension.Temperature)
                    {
                        Add(dimension.ToString());
                    }
                }
            }
        }

        if (Target(message, read) is not null)
        {
            Add("Convertible");
        }
    }

    public QuestionArguments Read(Message message, FoundQuestion question, UnitSystem site)
    {
        var about = About(message, question);
        var read = items.Read(message, question.Start, question.End, null);
        if (question.Question is "recall" or "where-to-read")
        {
            // "Where do I put the probe": what is put and the instrument name no reading.
            about ??= read.Where(item => !lexicon.Questions.IsOfTaking(message.Tokens, item.Start)).SelectMany(item => item.Facts).Select(f => f.Fact).FirstOrDefault();
        }
        else if (question.Question == "target")
        {
            // "What should my head be at 95 outside": no number there is the head itself.
            read.RemoveAll(item => item.Number is null && item.Facts.Any(f => f.Fact == about));
        }

        var (names, _) = Naming.Assign(read, null);
        var numbers = ImmutableArray.CreateBuilder<QuestionNumber>();
        for (var i = 0; i < read.Count; i++)
        {
            if (read[i].Number is not { } number)
            {
                continue;
            }

            var fact = names.TryGetValue(i, out var name) ? read[name].Facts.Select(f => f.Fact).FirstOrDefault(f => QuantityResolver.Fits(number, f)) : null;
            numbers.Add(new(number.Value, UnitOf(number, fact, question.Question, site), fact));
        }

        var refrigerant = read.Select(i => i.Refrigerant?.Designation).FirstOrDefault(d => d is not null);
        return new(refrigerant, numbers.ToImmutable(), Target(message, read)) { About = about, Suspects = question.Question == "suspect" ? Suspects(message, question) : [] };
    }

    private ImmutableArray<FaultCode> Suspects(Message message, FoundQuestion question)
    {
        var topics = Topics(message, question);
        return lexicon.Questions.Suspects.Find(s => topics.Contains(s.Topic)).Faults;
    }

    private Fact? About(Message message, FoundQuestion question)
    {
        var topics = Topics(message, question);
        return lexicon.Questions.About.Find(a => topics.Contains(a.Topic)).Fact;
    }

    private HashSet<int> Topics(Message message, FoundQuestion question)
    {
        var topics = new HashSet<int>();
        for (var at = question.Start; at < question.End; at++)
        {
            if (lexicon.Questions.Topics.LongestAt(message.Tokens, at, out var found) > 0)
            {
                topics.UnionWith(found);
            }
        }

        return topics;
    }

    private static UnitOfMeasure? UnitOf(SaidNumber number, Fact? fact, string? question, UnitSystem site)
    {
        if (fact is not null)
        {
            return QuantityResolver.Resolve(number with { Open = null }, fact, site).Reading?.Unit;
        }

        var units = number.Units.Where(u => !u.Everyday).ToList();
        if (units.Count == 0)
        {
            return null;
        }

        var wanted = question switch
        {
            "condenser-volume" => Dimension.Length,
            not null when MassQuestions.Contains(question) => Dimension.Mass,
            _ => Dimension.Pressure,
        };
        var degrees = site == UnitSystem.Us ? UnitOfMeasure.Fahrenheit : UnitOfMeasure.Celsius;
        return (units.Find(u => u.Unit?.Dimension == wanted) ?? units[0]).Unit ?? degrees;
    }

    // The unit that stands by itself beside a number that has one: "34 F in C", "how many psi is 2 bar".
    private UnitOfMeasure? Target(Message message, List<Item> read)
    {
        var number = read.Find(i => i.Number is { IsBare: false });
        if (number is null)
        {
            return null;
        }

        foreach (var item in read)
        {
            if (item.Number is not null)
            {
                continue;
            }

            var length = lexicon.Units.Units.LongestAt(message.Tokens, item.Start, out var units);
            if (length == 0 || !IsAskedFor(message.Tokens, item.Start))
            {
                continue;
            }

            foreach (var unit in units)
            {
                if (unit is { Everyday: false, Unit: { } target } && number.Number!.Units.Any(u => Convertible(u, target)))
                {
                    return target;
                }
            }
        }

        return null;
    }

    // "in C", "to psi", "how many psi".
    private bool IsAskedFor(IReadOnlyList<Token> tokens, int at) => at > 0 && lexicon.Units.TargetMarks.Contains(tokens[at - 1].Word);

    private static bool Convertible(UnitWord from, UnitOfMeasure to)
    {
        var dimension = from.Unit?.Dimension ?? Dimension.Temperature;
        return dimension == to.Dimension || (dimension is Dimension.Pressure or Dimension.Vacuum && to.Dimension is Dimension.Pressure or Dimension.Vacuum);
    }
}
