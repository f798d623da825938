using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Voice.Grammars;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Dialogues;

/// <summary>
/// Which words it can hear well here, said aloud once it has missed: nobody is left saying the same word over and over. A step offers
/// other words, a choice the numbers of its choices.
/// </summary>
internal sealed class Offers(QuestionGrammars grammars, PhraseBook phrases, ReadBacks say, VoiceRules rules)
{
    /// <summary>What is offered, what is said and what of it waits for "more"; or null where there is nothing to offer yet.</summary>
    public (ImmutableArray<Offer> Offered, string Say, string Waiting)? For(VoiceState state) => state switch
    {
        { Fact: null } when state.Misses >= rules.MissesBeforeDigits && grammars.Numbered(state.Asked) is { Count: > 0 } options => Numbers(options, o => o, state),
        { Fact: null } => Step(state),
        { Fact: { IsQuantity: false } fact } when state.Misses >= rules.MissesBeforeDigits && grammars.Numbered(fact) is { Count: > 0 } numbered => Numbers(numbered, c => c.Replace('-', ' '), state),
        _ => null,
    };

    private (ImmutableArray<Offer>, string, string)? Step(VoiceState state)
    {
        ImmutableArray<Offer> offered = [.. state.Asked.Choices.SelectMany(step => grammars.OfferedFor(state.Asked, step).Select(words => new Offer(words, step)))];
        return offered.Length < 2 ? null : (offered, say.Phrase("voice.say-either", ("first", string.Join(", ", offered[..^1].Select(o => o.Words))), ("second", offered[^1].Words)), state.Rest);
    }

    // As many as are listened to in one piece; the others wait for "more".
    private (ImmutableArray<Offer>, string, string) Numbers(IReadOnlyList<(string Words, string Choice)> numbered, Func<string, string> text, VoiceState state)
    {
        string[] items = [.. numbered.Select(n => say.Phrase("voice.by-number-one", ("number", n.Words), ("word", SpokenText.Of(phrases.WordAloud(text(n.Choice)))))).Select(item => char.ToLower(item[0], CultureInfo.InvariantCulture) + item[1..])];
        string First(int count) => count == items.Length ? say.Phrase("voice.by-number", ("list", string.Join(", ", items)))
            : say.Phrase("voice.by-number-more", ("list", string.Join(", ", items.Take(count))));
        var fitting = Enumerable.Range(1, items.Length).Reverse().First(n => n == 1 || state.Style.Estimate(First(n)) <= ReplySpeech.Longest);
        ImmutableArray<Offer> offered = [.. numbered.Select(n => new Offer(n.Words, text(n.Choice)))];
        return (offered, First(fitting), fitting == items.Length ? state.Rest : say.Phrase("voice.by-number", ("list", string.Join(", ", items.Skip(fitting)))));
    }
}
