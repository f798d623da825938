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
    /// <summary>What is offered and said, or null where there is nothing to offer yet.</summary>
    public (ImmutableArray<Offer> Offered, string Say)? For(VoiceState state) => state switch
    {
        { Fact: null } when state.Misses >= rules.MissesBeforeDigits && grammars.Numbered(state.Asked) is { Count: > 0 } options => Numbers(options),
        { Fact: null } => Step(state),
        { Fact: { IsQuantity: false } fact } when state.Misses >= rules.MissesBeforeDigits && grammars.Numbered(fact) is { Count: > 0 } numbered => Numbers(numbered),
        _ => null,
    };

    private (ImmutableArray<Offer>, string)? Step(VoiceState state)
    {
        ImmutableArray<Offer> offered = [.. state.Asked.Choices.SelectMany(step => grammars.OfferedFor(state.Asked, step).Select(words => new Offer(words, step)))];
        return offered.Length < 2 ? null : (offered, say.Phrase("voice.say-either", ("first", string.Join(", ", offered[..^1].Select(o => o.Words))), ("second", offered[^1].Words)));
    }

    private (ImmutableArray<Offer>, string) Numbers(IReadOnlyList<(string Words, string Choice)> numbered)
    {
        var list = string.Join(", ", numbered.Select(n => say.Phrase("voice.by-number-one", ("number", n.Words), ("word", SpokenText.Of(phrases.WordAloud(Text(n.Choice)))))).Select(item => char.ToLower(item[0], CultureInfo.InvariantCulture) + item[1..]));
        return ([.. numbered.Select(n => new Offer(n.Words, Text(n.Choice)))], say.Phrase("voice.by-number", ("list", list)));
    }

    private static string Text(string choice) => choice.Replace('-', ' ');
}
