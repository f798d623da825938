using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Turns;

/// <summary>
/// The dialogue: understands a message, takes what it brings, lets the rules judge, goes on along the walk, and answers
/// with the one next thing. Holds no state of its own; safe to use from many threads.
/// </summary>
public sealed class TurnEngine : ITurnEngine
{
    /// <summary>In letters: nobody describes the spot of a leak at greater length.</summary>
    private const int LongestPlace = 80;

    private readonly PhraseBook book;
    private readonly ShortWords words;
    private readonly Understand understand;
    private readonly AnswerQuestion answer;
    private readonly Hearing hearing;
    private readonly FactTaker taker;
    private readonly Commands commands;
    private readonly WalkGuide guide;
    private readonly OwnWords own;
    private readonly AnswerTaker answers;
    private readonly Opening opening;
    private readonly Landing landing;
    private readonly CylinderTaker cylinders;

    public TurnEngine(PhraseBook book, ShortWords words, WalkLibrary walks, Understand understand, Assess assess, AnswerQuestion answer)
    {
        (this.book, this.words, this.understand, this.answer) = (book, words, understand, answer);
        assess = new KnownAssessments(assess).Of;
        taker = new(book, assess);
        guide = new(book, walks, taker, assess);
        hearing = new(understand, words, guide.Stand);
        commands = new(book, words, walks, guide);
        own = new(book, words, understand, taker, commands, guide);
        answers = new(words, hearing, own, taker, guide);
        opening = new(book, understand, guide);
        landing = new(book, guide);
        cylinders = new(book);
    }

    public Turn Take(VisitState state, VisitState seen, InboundMessage message) =>
        seen.Version == state.Version ? Take(state, message) : landing.Land(state, seen, message, at => Take(at, message));

    public Reply? Answer(InboundMessage message, UnitSystem units)
    {
        var question = understand(message.Text, new(null, units));
        if (question.Intent != Intent.Question)
        {
            return null;
        }

        var draft = new TurnDraft(book, VisitState.Empty with { Units = units }, message.Person, message.At);
        foreach (var stated in (IEnumerable<FactValue>)[.. question.Readings, .. question.Observations])
        {
            draft.Emit(FactTaker.Event(stated, "anywhere", null, message.At, message.Person));
        }

        Tell(draft, question);
        return new(draft.Said, draft.Because, [], null, [], null, [], null, []) { Parts = draft.Parts };
    }

    public Turn Open(VisitOpened opened) => opening.Open(opened);

    public Turn Take(VisitState state, InboundMessage message)
    {
        var draft = new TurnDraft(book, state, message.Person, message.At);
        draft.Emit(new MessageHeard(message.MessageId, message.Channel, message.Text) { At = message.At, By = message.Person });
        CrewCommands.Return(draft);
        RequestTaker.Tell(draft);
        var wasAsked = Reminders.Heard(draft);
        var plain = ShortWords.Plain(message.Text);
        if (words.IsEmergency(plain))
        {
            return guide.Emergency(draft);
        }

        if (state.Outcome is not null)
        {
            return Closed(draft, message.Text);
        }

        if (wasAsked && words.IsWell(plain))
        {
            draft.Say("check-in.heard");
            return guide.Finish(draft, null);
        }

        if (own.Take(draft, message.Text, plain) is { } settled)
        {
            return settled;
        }

        // A reading told in the first breath goes past the question whether it is safe; its answer is heard all the same.
        if (words.IsSafe(plain))
        {
            draft.Say("taken.confirmed");
            return guide.Finish(draft, null);
        }

        var (understood, expected) = hearing.Hear(state, message, plain);
        if (Cylinder(draft, understood, message, expected))
        {
            return guide.Finish(draft, null);
        }

        return understood.Intent switch
        {
            Intent.Command => commands.Obey(draft, understood.Command!, message.Text, understood),
            Intent.Question => Answer(draft, understood),
            Intent.Answer => answers.Take(draft, understood, message),
            _ => Guess(draft, message.Text.Trim(), plain, expected, isFirst: state.LastMessage == 0, understood.IsQuestion),
        };
    }

    // What is said of a cylinder goes to its account; "skip" at what is asked of one leaves that out and not the walk's stop.
    private bool Cylinder(TurnDraft draft, Understood understood, InboundMessage message, Fact? expected)
    {
        if (understood is { Intent: Intent.Command, Command: "skip" } && draft.State is { Cylinders.Asks: not null, Questioned.IsEmpty: true, Clarification: null })
        {
            cylinders.Skip(draft, message);
            return true;
        }

        return understood.Intent is not (Intent.Command or Intent.Question) && cylinders.Take(draft, understood, message, expected);
    }

    private Turn Answer(TurnDraft draft, Understood question)
    {
        // "30 psi suction, what is the superheat": what is stated in the same breath is taken first.
        IEnumerable<FactValue> stated = [.. question.Readings, .. question.Observations];
        var assessment = stated.Any() ? taker.Take(draft, stated, guide.Stand.Stop(draft.State)) : null;
        Tell(draft, question);
        return guide.Finish(draft, assessment);
    }

    private void Tell(TurnDraft draft, Understood question)
    {
        if (answer(question, draft.State) is { } answered)
        {
            foreach (var phrase in new[] { answered.Say, answered.Needs ?? Phrase.Empty }.Where(p => !p.IsEmpty))
            {
                draft.Say(new SaidPart("answer", null, phrase));
            }

            foreach (var reason in answered.Because)
            {
                draft.AddReason(reason);
            }
        }
        else
        {
            draft.Say("unanswered.question");
        }
    }

    // What the understanding leaves alone: a choice said as it is written.
    private Turn Guess(TurnDraft draft, string text, string plain, Fact? expected, bool isFirst, bool isQuestion)
    {
        if (own.Choose(draft, plain, isWhole: false) is { } chosen)
        {
            return chosen;
        }

        if (expected is not null && Choice(expected, plain) is { } choice)
        {
            return guide.Finish(draft, taker.Take(draft, [new Observation(expected, choice)], guide.Stand.Stop(draft.State)));
        }

        // The opening words of a visit ("cold room is warm") need no answer but the first question.
        if (isFirst)
        {
            Opening.Greet(draft);
            return guide.Finish(draft, null);
        }

        if (!isQuestion && guide.Stand.WantsPlaceOfLeak(draft.State) && plain.Contains(' ') && plain.Length <= LongestPlace)
        {
            LeakTaker.Take(draft, text);
            return guide.Finish(draft, null);
        }

        // Who went out before the room was through: what is read there is as good, in any order.
        if (words.IsArrived(plain) && Hearing.PlaceOfTheStop(draft.State) == Place.Room)
        {
            draft.Say("arrived.early");
            return guide.Finish(draft, null);
        }

        // What was asked back is not asked again and again: the walk's own question stands.
        if (draft.State.Clarification is { What: "fact" or "value" or "range" or "span" } open)
        {
            draft.Emit(new EventWithdrawn(open.Number) { At = draft.At, By = draft.By });
        }

        draft.Say(isQuestion ? "unanswered.question" : "unknown.text");
        return guide.Finish(draft, null);
    }

    private Turn Closed(TurnDraft draft, string text)
    {
        var understood = understand(text, new(null, draft.State.Units));
        if (understood is { Intent: Intent.Command, Command: "undo" or "status" or "report" or "who" or "watch" or "unwatch" or "leave" })
        {
            return commands.Obey(draft, understood.Command, text);
        }

        draft.Say("command.closed");
        return guide.Finish(draft, null);
    }

    private string? Choice(Fact fact, string plain)
    {
        if (fact.Kind == FactKind.YesNo)
        {
            return words.IsYes(plain) ? "yes" : words.IsNo(plain) ? "no" : null;
        }

        var said = plain.StartsWith("the ", StringComparison.Ordinal) ? plain[4..] : plain;
        return fact.Choices.FirstOrDefault(c => ShortWords.Plain(c) == said || ShortWords.Plain(book.Word(c)) == plain);
    }
}
