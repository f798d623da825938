using System.Globalization;
using System.Text.RegularExpressions;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;
using Assistant.Voice.Grammars;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Dialogues;

/// <summary>What a number said means, whether it can be, and the sentences that read it back.</summary>
internal sealed partial class ReadBacks(QuestionGrammars grammars, PhraseBook phrases, Understander understander)
{
    /// <summary>The number that answers the question, or null where the words leave anything open.</summary>
    public Pending? Number(VoiceState state, string words)
    {
        if (state.Fact is not { IsQuantity: true } fact)
        {
            return null;
        }

        var understood = understander.Understand(words, new(fact, state.Units));
        return understood is { Clarify: null, Readings: [{ } reading], Observations: [] } && reading.Fact == fact ? Pended(state, reading, NumberText.WithoutUnit(words, grammars.IsNumberWord)) : null;
    }

    /// <summary>The refrigerant named where one is asked for, or null.</summary>
    public Pending? Refrigerant(VoiceState state, string words) =>
        state.Fact == FactCatalogue.Refrigerant && understander.Understand(words, new(FactCatalogue.Refrigerant, state.Units)).Observations is [{ } only] && only.Fact == FactCatalogue.Refrigerant
            ? new(only.Value, words, null)
            : null;

    /// <summary>Null where the conversation would read another value out of the text than was read back.</summary>
    public Pending? Pended(VoiceState state, Reading reading, string words)
    {
        var text = NumberText.Sent(reading);
        return understander.Understand(text, new(reading.Fact, state.Units)) is { Clarify: null, Readings: [{ } again], Observations: [] } && again == reading
            ? new(text, words, reading)
            : null;
    }

    /// <summary>What was heard, said back: a number digit by digit, and in words too where another sounds like it.</summary>
    public string Sentence(Pending pending) => pending.Reading is not { } reading
        ? Phrase("voice.read-back-word", ("word", InDigits().Replace(SpokenText.Of(phrases.WordAloud(pending.Text)), m => SpokenText.Digits(m.Value))))
        : Phrase(
            NumberText.SoundsLike(pending.Words) is null ? "voice.read-back" : "voice.read-back-named",
            ("fact", reading.Fact.Name), ("number", pending.Words), ("digits", NumberText.Digits(reading)), ("unit", NumberText.Unit(reading.Unit)));

    /// <summary>Both numbers, in words and digit by digit.</summary>
    public string WhichOf(Pending first, Pending second) => Phrase(
        "voice.which-of-two", ("first", first.Words), ("first_digits", NumberText.Digits(first.Reading!)), ("second", second.Words), ("second_digits", NumberText.Digits(second.Reading!)));

    /// <summary>Why nobody can have read that, in words, or null.</summary>
    public string? Impossible(Reading reading)
    {
        (string, string) digits = ("digits", NumberText.Digits(reading)), unit = ("unit", NumberText.Unit(reading.Unit));
        if (grammars.SpanOf(reading.Fact, reading.Unit) is { } span && !span.Holds(reading.Value))
        {
            return Phrase("voice.out-of-range", digits, unit, ("from", Whole(span.From)), ("to", Whole(span.To)));
        }

        return Assessor.Assess(FactSet.Of(reading)).Rejected.IsEmpty ? null : Phrase("voice.impossible", digits, unit);
    }

    private static string Whole(int number) => SpokenText.Of(number.ToString(CultureInfo.InvariantCulture));

    public static UnitOfMeasure UnitOf(VoiceState state) => QuestionGrammars.UnitOf(state.Fact!, state.Asked.Units, state.Units);

    /// <summary>The walk's own word for it: how it was said is the ear's business.</summary>
    public string Sent(string meaning, string words) => grammars.ConfirmedPhrase(meaning) ?? meaning switch
    {
        "accept" => "yes",
        "reject" => "no",
        _ when meaning.StartsWith(OfferedChoices.Option, StringComparison.Ordinal) => meaning[OfferedChoices.Option.Length..],
        _ when meaning.StartsWith(OfferedChoices.Leak, StringComparison.Ordinal) => grammars.LeakAt(meaning[OfferedChoices.Leak.Length..]),
        _ when meaning.IndexOf(':', StringComparison.Ordinal) is > 0 and var colon => meaning[..colon] == "choice" ? meaning[(colon + 1)..].Replace('-', ' ') : meaning[(colon + 1)..],
        _ => words,
    };

    // A value in the words of a choice ("Lee 117 psig") is told digit by digit like any other.
    [GeneratedRegex(@"\d+(\.\d+)?")]
    private static partial Regex InDigits();

    public string Phrase(string key, params ReadOnlySpan<(string Name, string Word)> parts)
    {
        var filled = new ReasonPart[parts.Length];
        for (var i = 0; i < parts.Length; i++)
        {
            filled[i] = parts[i];
        }

        return phrases.Say(key, default, filled).Aloud;
    }
}
