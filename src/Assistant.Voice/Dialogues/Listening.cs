using Assistant.Voice.Grammars;

namespace Assistant.Voice.Dialogues;

/// <summary>What is listened for in each state, and what it must be told apart from.</summary>
internal sealed class Listening(QuestionGrammars grammars, ReadBacks say)
{
    public SpeechGrammar Grammar(VoiceState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state.Phase switch
        {
            VoicePhase.Confirmation or VoicePhase.GoingOn => grammars.Confirm,
            VoicePhase.Pair when state.Pair is { } pair => grammars.Pair(pair.First.Words, pair.Second.Words),
            VoicePhase.Digits when state.Fact is { } fact => grammars.Spelled(fact, ReadBacks.UnitOf(state)),
            VoicePhase.Resuming => grammars.Command,
            VoicePhase.WakeWord => grammars.Wake,
            _ when state is { Fact: { IsQuantity: false } fact, Offered.IsEmpty: false } => grammars.ByNumber(fact, state.Units),
            _ when state is { Fact: null, Offered: [var first, ..] } && grammars.Numbered(state.Asked) is [var number, ..] && number.Words == first.Words => grammars.ByNumber(state.Asked),
            _ => WithoutRefused(state, grammars.For(state.Asked, state.Units)),
        };
    }

    /// <summary>What a sound must be told apart from before these words are acted on; null for words that are read back anyway.</summary>
    public SpeechGrammar? Rivals(VoiceState state, string words)
    {
        var grammar = Grammar(state);
        return grammar.MeaningOf(words) switch
        {
            null when state.Phase == VoicePhase.Answer && NumberText.SoundsLike(words) is { } alike && say.Number(state, alike) is not null => QuestionGrammars.Just(alike),
            null or "command:emergency" => null,
            var meaning when meaning.StartsWith("control:", StringComparison.Ordinal) && state.Phase != VoicePhase.Answer => null,
            // Only "wrong" can be taken for "correct" with harm: a command between them changes nothing.
            "accept" when state.Phase == VoicePhase.Confirmation => grammar.Only("reject"),
            var meaning when SpeechGrammar.IsValue(meaning) => null,
            var meaning => grammar.Without(meaning),
        };
    }

    /// <summary>What was asked for, where these words are something nobody asked for; otherwise null.</summary>
    public SpeechGrammar? Instead(VoiceState state, string words)
    {
        var grammar = Grammar(state);
        return grammar.MeaningOf(words) is not { } meaning || !SpeechGrammar.IsUnasked(meaning) ? null : state.Phase switch
        {
            VoicePhase.Answer => grammar.Answers,
            VoicePhase.WakeWord => grammar.Only("wake"),
            _ => null,
        };
    }

    /// <summary>Whether words are whole, so that no more need be waited for: a number with its unit, or a phrase that none of another meaning begins with.</summary>
    public bool IsWhole(VoiceState state, string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return Grammar(state).MeaningOf(words) is { } meaning
            ? !Grammar(state).Meanings.Any(m => m.Key != meaning && m.Value.Any(p => p.StartsWith(words + " ", StringComparison.Ordinal)))
            : state.Phase == VoicePhase.Answer && !grammars.IsNumberWord(words.Split(' ')[^1]) && say.Number(state, words) is not null;
    }

    // Who has just said "wrong" to it does not mean it now. The only answer there is stays.
    private static SpeechGrammar WithoutRefused(VoiceState state, SpeechGrammar grammar) =>
        state.Refused is { } refused && grammar.Meanings.ContainsKey(refused) && grammar.Without(refused) is { Answers.IsEmpty: false } others
            ? others with { IsPassing = true }
            : grammar;
}
