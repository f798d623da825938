using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Voice.Grammars;

/// <summary>
/// How what a reply offers is said: a walk's option by the walk's words for it, a unit by the lexicon's, yes and no, and which of two
/// people's readings by its place, as names have no known sound. Everything else by the words it is offered with.
/// </summary>
internal sealed class OfferedChoices(ListeningPlan plan, LexiconPhrases lexicon, WalkLibrary walks, PronunciationDictionary sounds)
{
    /// <summary>What a meaning begins with that stands for one of the words offered.</summary>
    public const string Option = "option:";

    /// <summary>Yes to a walk that the assistant itself offers: it begins, and measures, opens and closes nothing.</summary>
    public const string Begin = "step:yes";

    /// <summary>What a meaning begins with that names the place of a leak.</summary>
    public const string Leak = "leak:";

    /// <summary>Every word that may be offered or named without a fact being asked, heard or not.</summary>
    public IEnumerable<string> Words => Phrases(walks).Concat(plan.OfTwo.Values.SelectMany(p => p)).Concat(plan.Leak).Concat(lexicon.LeakPlaces).SelectMany(p => p.Split(' ')).Distinct();

    /// <summary>What walks and the dialogue itself offer, in all the ways it may be said.</summary>
    public static IEnumerable<string> Phrases(WalkLibrary walks) =>
        walks.All.SelectMany(w => w.Stops).SelectMany(s => s.Choice?.Options ?? []).SelectMany(o => o.Words).Concat(OwnChoices.All.Select(ShortWords.Plain));

    /// <summary>The meanings of what a reply offers, without those that are a fact's own choices.</summary>
    public IEnumerable<(string Meaning, IEnumerable<string> Phrases)> Of(Reply reply, Fact? fact) =>
        StopOf(reply, fact)?.Choice is { } choice
            ? reply.Choices.Select((said, i) => (Option + said, Heard([.. choice.Options[i].Words, .. Answers(said)])))
            : reply.Choices.Where(c => fact is null || !fact.Choices.Contains(c)).Select((said, i) => Alone(reply, fact, said, i)).Concat(Declined(reply, fact));

    /// <summary>"leak at the flare nut" where the walk waits for it; none elsewhere.</summary>
    public IEnumerable<(string Meaning, IEnumerable<string> Phrases)> Leaks(Reply reply) =>
        reply is { AskedFact: null, Walk: { } at } && walks.Find(at.Walk)?.Find(at.Stop)?.Until is WasLeakFound && reply.Choices is ["ok"]
            ? lexicon.LeakPlaces.Select(place => (Leak + place, Heard([.. plan.Leak.Select(words => $"{words} {place}"), place])))
            : [];

    /// <summary>Whether the reply asks which of a walk's own options it is.</summary>
    public bool IsChoosing(Reply reply) => StopOf(reply, reply.AskedFact is { } name ? FactCatalogue.Find(name) : null) is not null;

    /// <summary>Whether the conversation would take these words for one of the options offered.</summary>
    public bool IsTaken(Reply reply, string text) => StopOf(reply, null)?.Choice?.Find(text, isWhole: true) is not null;

    // What is offered may be something else that is open at that stop: then the words are not its options'.
    private WalkStop? StopOf(Reply reply, Fact? fact) =>
        fact is null && reply.Walk is { } at && walks.Find(at.Walk)?.Find(at.Stop) is { Choice: { } choice } stop && choice.Options.Length == reply.Choices.Length
            && choice.Options.Zip(reply.Choices).All(o => o.First.Words.Contains(ShortWords.Plain(o.Second))) ? stop : null;

    private (string Meaning, IEnumerable<string> Phrases) Alone(Reply reply, Fact? fact, string said, int place)
    {
        if (fact is null && plan.Steps.TryGetValue(said, out var step))
        {
            return ("step:" + said, Heard(step));
        }

        if (said is "yes" or "no")
        {
            // A value in question is stood by or dropped; a walk that is offered is begun.
            return (IsOffer(reply, fact) ? Begin : fact is null ? Option + said : said == "yes" ? "accept" : "reject", Heard(Answers(said)));
        }

        var unit = fact is { IsQuantity: true } ? UnitOfMeasure.All.FirstOrDefault(u => u.Symbol == said && reply.Units.Contains(said)) : null;
        IEnumerable<string> own = unit is null ? [ShortWords.Plain(said)] : lexicon.Unit(unit).Where(w => w.Split(' ').Length <= plan.MostWords);
        var isOfTwo = reply.Choices.Length == 2 && reply.Choices.Any(c => !sounds.CanBeHeard(ShortWords.Plain(c))) && unit is null;
        return (Option + said, Heard(isOfTwo ? [.. own, .. plan.OfTwo.GetValueOrDefault(place == 0 ? "first" : "second", [])] : own));
    }

    // "Now? Yes, or later."
    private static bool IsOffer(Reply reply, Fact? fact) => fact is null && reply.Choices.Contains("yes") && reply.Choices.Contains("later");

    // A no is no word on the button, and must not be taken for the yes it sounds like.
    private IEnumerable<(string Meaning, IEnumerable<string> Phrases)> Declined(Reply reply, Fact? fact) => IsOffer(reply, fact) ? [("reject", Heard(Answers("no")))] : [];

    private ImmutableArray<string> Answers(string said) => said switch { "yes" => plan.Confirm["accept"], "no" => plan.Confirm["reject"], _ => [] };

    private IEnumerable<string> Heard(IEnumerable<string> phrases) => phrases.Distinct().Where(sounds.CanBeHeard);
}
