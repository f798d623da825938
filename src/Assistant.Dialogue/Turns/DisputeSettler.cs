using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Turns;

/// <summary>Asks which of two people's readings counts, and takes the answer: a name, "mine", "the first", or the value itself.</summary>
internal sealed class DisputeSettler(ShortWords words, Understand understand, WalkGuide guide)
{
    /// <summary>A name in a longer message is no answer.</summary>
    private const int MostWords = 6;

    /// <summary>The difference that is asked about first, or null.</summary>
    public static (Fact Fact, Dispute Dispute)? Open(VisitState state) => state.Disputes.IsEmpty || state.Clarification is not null
        ? null
        : state.Disputes.OrderBy(d => d.Value.Other.At).ThenBy(d => d.Key.Name, StringComparer.Ordinal).Select(d => ((Fact, Dispute)?)(d.Key, d.Value)).First();

    /// <summary>The question with the two as choices.</summary>
    public static Asked Ask(PhraseBook book, VisitState state, Fact fact, Dispute dispute)
    {
        var (one, other) = (dispute.One, dispute.Other);
        var ask = book.Say("differ.ask", state.Units, ("fact", fact.Name), ("person", one.By), ("value", FactText.Of(one.Value!)), ("other", other.By), ("found", FactText.Of(other.Value!)));
        return new(ask, [Choice(book, one), Choice(book, other)], fact);
    }

    /// <summary>The turn where the message settles what is asked, or answers it with no more than yes or no; null where it is something else.</summary>
    public Turn? Take(TurnDraft draft, PhraseBook book, string text, string plain)
    {
        if (Open(draft.State) is not var (fact, dispute))
        {
            return null;
        }

        if ((Named(draft, book, dispute, plain) ?? Valued(draft.State, fact, dispute, text)) is { } counts)
        {
            var loses = counts == dispute.One ? dispute.Other : dispute.One;
            draft.Emit(new EventWithdrawn(loses.Number) { At = draft.At, By = draft.By, InFavourOf = counts.Number });
            draft.Say("differ.settled", ("fact", fact.Name), ("value", FactText.Of(counts.Value!)), ("person", counts.By), ("other", loses.By));
            return guide.Finish(draft, null);
        }

        if (words.IsYes(plain) || words.IsNo(plain) || words.IsConfirm(plain) || words.IsLater(plain))
        {
            draft.Say("differ.which");
            return guide.Finish(draft, null);
        }

        return null;
    }

    private static string Choice(PhraseBook book, TakenFact taken) => $"{taken.By} {book.Word(FactText.Of(taken.Value!))}";

    private TakenFact? Named(TurnDraft draft, PhraseBook book, Dispute dispute, string plain)
    {
        TakenFact[] both = [dispute.One, dispute.Other];
        if (Array.Find(both, t => ShortWords.Plain(Choice(book, t)) == plain) is { } chosen)
        {
            return chosen;
        }

        var said = plain.Split(' ');
        if (said.Length > MostWords || plain.Any(char.IsDigit))
        {
            return null;
        }

        if (words.IsMine(plain))
        {
            return Array.Find(both, t => t.By == draft.By);
        }

        if (words.IsFirst(plain) || words.IsSecond(plain))
        {
            return words.IsFirst(plain) ? dispute.One : dispute.Other;
        }

        // "sam", "sams", "lee is right": one of the two by name and not the other.
        var named = Array.FindAll(both, t => ShortWords.Plain(t.By).Split(' ').All(part => said.Contains(part) || said.Contains(part + "s")));
        return named.Length == 1 ? named[0] : null;
    }

    private TakenFact? Valued(VisitState state, Fact fact, Dispute dispute, string text)
    {
        var understood = understand(text, new(fact, state.Units));
        if (understood is not { Intent: Intent.Answer, Clarify: null })
        {
            return null;
        }

        return ((IEnumerable<FactValue>)[.. understood.Readings, .. understood.Observations]).ToList() is [var only]
            ? only == dispute.One.Value ? dispute.One : only == dispute.Other.Value ? dispute.Other : null
            : null;
    }
}
