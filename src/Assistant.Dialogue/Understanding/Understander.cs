using System.Globalization;
using Assistant.Dialogue.Understanding.Analysis;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding;

/// <summary>Turns what a technician says or types into readings, observations, a command or a question. Pure and safe from several threads; never throws.</summary>
public sealed class Understander
{
    /// <summary>Nothing beyond this is read: no message of a technician is longer.</summary>
    private const int LongestText = 10_000;

    private readonly Lexicon lexicon;
    private readonly CommandReader commands;
    private readonly QuestionReader questions;
    private readonly AnswerReader answers;
    private readonly ReminderReader reminders;
    private readonly CylinderReader cylinders;
    private readonly LeakReader leaks;
    private readonly RequestReader requests;

    public Understander(Lexicon lexicon)
    {
        this.lexicon = lexicon;
        commands = new(lexicon);
        questions = new(lexicon);
        answers = new(lexicon);
        reminders = new(lexicon);
        cylinders = new(lexicon);
        leaks = new(lexicon);
        requests = new(lexicon);
    }

    /// <summary>What a message says in the light of what was just asked and of the site's units. What it leaves open is said in <see cref="Understood.Clarify"/>.</summary>
    public Understood Understand(string text, UnderstandingContext context)
    {
        var message = Message.Read(text.Length <= LongestText ? text : text[..LongestText], lexicon);
        if (message.IsCode || message.Tokens.Count == 0)
        {
            return Understood.Unknown;
        }

        if (commands.Read(message) is { } command)
        {
            return lexicon.Commands.Walks.TryGetValue(command, out var walk)
                ? Understood.Unknown with { Intent = Intent.Command, Command = CommandsPart.Begin, Walk = walk }
                : Understood.Unknown with { Intent = Intent.Command, Command = command };
        }

        if (reminders.Read(message) is { } reminding)
        {
            return Understood.Unknown with { Intent = Intent.Command, Command = "remind", Reminding = reminding };
        }

        if (leaks.Read(message) is { } leak)
        {
            return Understood.Unknown with { Intent = Intent.Command, Command = "leak", Leak = leak };
        }

        if (requests.Read(message, certain: true) is { } wish)
        {
            return Request(wish);
        }

        if (questions.Find(message, context.Expected) is not { } question)
        {
            if (requests.Read(message, certain: false) is { } wanted)
            {
                return Request(wanted);
            }

            var cylinder = cylinders.Read(message, context);
            return Answer(Tagged(answers.Read(message, 0, message.Tokens.Count, context), cylinder)) with { Cylinder = cylinder };
        }

        var told = question.Start == 0 ? Told.Nothing : answers.Read(message, 0, question.Start, context);
        if (told.Open is not null && question.Question is not null && SentenceOf(message, question) is var sentence && sentence < question.Start)
        {
            // "150 psi at 70 and now 145 at 60, did it pass": what is not told clearly in the same breath belongs to the question.
            question = question with { Start = sentence };
            told = sentence == 0 ? Told.Nothing : answers.Read(message, 0, sentence, context);
        }

        return question.Question is null
            ? Answer(told) with { IsQuestion = told.IsNothing }
            : Answer(told) with { Intent = Intent.Question, Question = question.Question, Arguments = questions.Arguments(message, question, context.Units) };
    }

    private static Understood Request(RequestSaid said) =>
        Understood.Unknown with { Intent = Intent.Command, Command = said.IsDropped ? "never-mind" : "ask-for", Requested = said };

    // "2 lb from cylinder 14": the number on its tag is no weight.
    private static Told Tagged(Told told, CylinderTold? cylinder) => told.Readings.Count < 2 || cylinder?.Tag is not { } tag
        ? told
        : told with { Readings = [.. told.Readings.Where(r => r.Fact != FactCatalogue.CylinderWeight || r.Value.ToString(CultureInfo.InvariantCulture) != tag)] };

    private static int SentenceOf(Message message, FoundQuestion question)
    {
        var start = question.Start;
        while (start > 0 && !message.Tokens[start - 1].EndsSentence)
        {
            start--;
        }

        return start;
    }

    private static Understood Answer(Told told) => told.IsNothing
        ? Understood.Unknown with { Correcting = told.Correcting }
        : Understood.Unknown with { Intent = Intent.Answer, Readings = [.. told.Readings], Observations = [.. told.Observations], Clarify = told.Open, Unheard = [.. told.Unheard], Correcting = told.Correcting, Impossible = told.Impossible, OpenUnit = told.OpenUnit, OpenSpan = told.OpenSpan };
}
