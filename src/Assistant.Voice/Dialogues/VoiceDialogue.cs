using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Grammars;
using Assistant.Voice.Hearing;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Dialogues;

/// <summary>
/// The talk by voice between hearing and the conversation, as a pure state machine: what was heard and the state give the next
/// state, what is said and what is sent on. No value is sent on that was not read back (a number digit by digit) and confirmed; a
/// command is sent on at once only where the sound told it clearly from everything else that could have been said.
/// </summary>
public sealed class VoiceDialogue(QuestionGrammars grammars, PhraseBook phrases, Understander understander, VoiceRules? rules = null)
{
    private readonly VoiceRules rules = rules ?? new();
    private readonly ReadBacks say = new(grammars, phrases, understander);
    private readonly ReplyTelling telling = new(phrases);

    /// <summary>Where the talk begins, or begins again: what is asked now is said.</summary>
    public VoiceStep Start(Reply asked, UnitSystem units, VoiceState? before = null) =>
        Answered(new VoiceState { Asked = asked, Units = units, Style = before?.Style ?? new(), Unheard = before?.Unheard ?? [] }, asked);

    /// <summary>The conversation has answered.</summary>
    public VoiceStep Answered(VoiceState state, Reply reply)
    {
        ArgumentNullException.ThrowIfNull(state);
        return telling.Tell(Fresh(state), reply);
    }

    /// <summary>Somebody else answered what was pending: it is dropped, and the new question asked.</summary>
    public VoiceStep MovedOn(VoiceState state, Reply now)
    {
        var step = Answered(state, now);
        return Speak(step.State, $"{say.Phrase("voice.moved-on")} {step.Say}");
    }

    /// <summary>Nobody has spoken for long: it waits for its name, and then asks again.</summary>
    public static VoiceState Sleep(VoiceState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return Fresh(state) with { Phase = VoicePhase.WakeWord, Last = ReplySpeech.Question(state.Asked) };
    }

    /// <summary>What is listened for now.</summary>
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
            _ => grammars.For(state.Asked, state.Units),
        };
    }

    /// <summary>What is listened for while the assistant speaks.</summary>
    public SpeechGrammar WhileSpeaking => grammars.Control;

    /// <summary>What a sound must be told apart from before these words are acted on; null for words that are read back anyway.</summary>
    public SpeechGrammar? Rivals(VoiceState state, string words)
    {
        var grammar = Grammar(state);
        return grammar.MeaningOf(words) switch
        {
            null when state.Phase == VoicePhase.Answer && NumberText.SoundsLike(words) is { } alike && say.Number(state, alike) is not null => QuestionGrammars.Just(alike),
            null or "command:emergency" => null,
            var meaning when meaning.StartsWith("control:", StringComparison.Ordinal) => null,
            // Only "wrong" can be taken for "correct" with harm: a command between them changes nothing.
            "accept" when state.Phase == VoicePhase.Confirmation => grammar.Only("reject"),
            var meaning when meaning.StartsWith("choice:", StringComparison.Ordinal) => null,
            var meaning => grammar.Without(meaning),
        };
    }

    /// <summary>Whether words are whole, so that no more need be waited for: a number with its unit, or a phrase that none of another meaning begins with.</summary>
    public bool IsWhole(VoiceState state, string words)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(words);
        return Grammar(state).MeaningOf(words) is { } meaning
            ? !Grammar(state).Meanings.Any(m => m.Key != meaning && m.Value.Any(p => p.StartsWith(words + " ", StringComparison.Ordinal)))
            : state.Phase == VoicePhase.Answer && !grammars.IsNumberWord(words.Split(' ')[^1]) && say.Number(state, words) is not null;
    }

    /// <summary>Something was heard while the assistant speaks: only what stops or changes its speech counts.</summary>
    public VoiceStep HearWhileSpeaking(VoiceState state, Heard heard) =>
        heard?.Accepted is { } words && grammars.Control.MeaningOf(words) is { } meaning && Control(state, meaning) is { } step ? step : new(state, "");

    public VoiceStep Hear(VoiceState state, Heard heard)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(heard);
        if (heard.Kind == HeardKind.Noise)
        {
            return new(state, "");
        }

        var meaning = heard.Accepted is { } words ? Grammar(state).MeaningOf(words) : null;
        if (meaning is not null && !rules.IsDoubtful(state, heard, meaning) && Control(state, meaning) is { } control)
        {
            return control;
        }

        return state.Phase switch
        {
            VoicePhase.WakeWord => meaning != "wake" ? new(state, "") : state.Unheard.IsEmpty ? Repeat(Fresh(state)) : telling.GoOn(Fresh(state)),
            VoicePhase.GoingOn => meaning is "command:resume" or "accept" ? telling.GoOn(Fresh(state)) : Unclear(state, say.Phrase("voice.go-on")),
            VoicePhase.Resuming => meaning == "command:resume" ? Repeat(state with { Phase = state.Interrupted }) : new(state, ""),
            VoicePhase.Confirmation => Confirm(state, heard, meaning),
            VoicePhase.Pair => Which(state, heard, meaning),
            VoicePhase.Digits => Spell(state, heard, meaning),
            _ => Answer(state, heard, meaning),
        };
    }

    // What works everywhere, and stores nothing.
    private VoiceStep? Control(VoiceState state, string meaning)
    {
        switch (meaning)
        {
            case "control:stop":
                return new(state, "");
            case "control:slower":
                return Repeat(state with { Style = state.Style.Slower });
            case "control:faster":
                return Repeat(state with { Style = state.Style.Faster });
            case "control:louder":
                return Repeat(state with { Style = state.Style.Louder });
            case "control:digits" when state is { Phase: VoicePhase.Answer, Fact.IsQuantity: true }:
                return AskDigits(state);
            case "command:repeat":
                return Repeat(state);
            case "command:pause" when state.Phase != VoicePhase.Resuming:
                return Speak(state with { Phase = VoicePhase.Resuming, Interrupted = state.Phase }, say.Phrase("voice.waits"), keep: true);
            case "command:emergency":
                return new(Fresh(state), "", "emergency");
            default:
                return null;
        }
    }

    private VoiceStep Answer(VoiceState state, Heard heard, string? meaning)
    {
        if (heard.Accepted is not { } words)
        {
            return Missed(state);
        }

        if (meaning is null)
        {
            return state.Fact == FactCatalogue.Refrigerant ? Refrigerant(state, words) : NumberHeard(state, heard, words);
        }

        if (rules.IsDoubtful(state, heard, meaning))
        {
            return Missed(state);
        }

        if (meaning == "command:more" && state.Rest.Length > 0)
        {
            var (now, waiting) = ReplySpeech.Portion(state.Rest, state.Style);
            return Speak(state with { Rest = waiting }, now);
        }

        // A choice is a value too: in noise a wrong one can fit clearly, so it is read back like a number. A command is not stored as one.
        var pending = new Pending(ReadBacks.Sent(meaning, words), words, null);
        var isValue = meaning.StartsWith("choice:", StringComparison.Ordinal);
        return !isValue && rules.IsClear(state, heard, meaning) ? new(Fresh(state), "", pending.Text) : ReadBack(state, pending);
    }

    private VoiceStep Refrigerant(VoiceState state, string words) =>
        understander.Understand(words, new(FactCatalogue.Refrigerant, state.Units)).Observations is [{ } only] && only.Fact == FactCatalogue.Refrigerant
            ? ReadBack(state, new(only.Value, words, null))
            : Missed(state);

    private VoiceStep NumberHeard(VoiceState state, Heard heard, string words)
    {
        if (say.Number(state, words) is not { } pending)
        {
            return Missed(state);
        }

        // Where the sound does not tell "thirteen" from "thirty" clearly, both are named.
        return heard.Margin < rules.LeastPairMargin && NumberText.SoundsLike(words) is { } alike && say.Number(state, alike) is { } other && say.Impossible(other.Reading!) is null
            ? AskWhich(state, pending, other)
            : ReadBack(state, pending);
    }

    private VoiceStep ReadBack(VoiceState state, Pending pending)
    {
        if (pending.Reading is not { } reading)
        {
            return Speak(state with { Phase = VoicePhase.Confirmation, Pending = pending, UnclearAnswers = 0 }, say.Phrase("voice.read-back-word", ("word", SpokenText.Of(phrases.WordAloud(pending.Text)))));
        }

        if (say.Impossible(reading) is { } why)
        {
            return Missed(state, why);
        }

        var isNamed = NumberText.SoundsLike(pending.Words) is not null;
        return Speak(
            state with { Phase = VoicePhase.Confirmation, Pending = pending, UnclearAnswers = 0 },
            say.Phrase(isNamed ? "voice.read-back-named" : "voice.read-back", ("fact", reading.Fact.Name), ("number", pending.Words), ("digits", NumberText.Digits(reading)), ("unit", NumberText.Unit(reading.Unit))));
    }

    private VoiceStep AskWhich(VoiceState state, Pending first, Pending second) => Speak(
        state with { Phase = VoicePhase.Pair, Pair = (first, second) },
        say.Phrase("voice.which-of-two", ("first", first.Words), ("first_digits", NumberText.Digits(first.Reading!)), ("second", second.Words), ("second_digits", NumberText.Digits(second.Reading!))));

    private VoiceStep Which(VoiceState state, Heard heard, string? meaning) => (meaning, state.Pair) switch
    {
        ("pair:first", { } pair) => ReadBack(state, pair.First),
        ("pair:second", { } pair) => ReadBack(state, pair.Second),
        ("command:skip", _) => Answer(Fresh(state), heard, meaning),
        _ => Missed(state),
    };

    private VoiceStep Confirm(VoiceState state, Heard heard, string? meaning)
    {
        switch (meaning)
        {
            // A yes must be told clearly from every no; a no need not be told from a yes.
            case "accept" when heard.Margin >= rules.LeastYesMargin:
                return new(Fresh(state), "", state.Pending!.Text);
            case "reject":
                return Missed(state with { Pending = null });
            case "command:skip":
                return ReadBack(Fresh(state), new("skip", "skip", null));
            default:
                return state.UnclearAnswers + 1 >= rules.MostUnclearAnswers
                    ? Missed(state with { Pending = null }, say.Phrase("voice.dropped"))
                    : Speak(state with { UnclearAnswers = state.UnclearAnswers + 1 }, say.Phrase("voice.correct-or-wrong"), keep: true);
        }
    }

    private VoiceStep Spell(VoiceState state, Heard heard, string? meaning)
    {
        if (meaning == "digits:clear")
        {
            return Speak(state with { Digits = "" }, say.Phrase("voice.digits-clear"));
        }

        if (meaning == "command:skip")
        {
            return Answer(Fresh(state), heard, meaning);
        }

        if (heard.Accepted is not { } words || SpelledNumber.Append(state.Digits, meaning is null ? words.Split(' ') : []) is not { } digits)
        {
            return state.Misses + 1 >= rules.MostMisses ? Missed(state) : Speak(state with { Misses = state.Misses + 1 }, say.Phrase("voice.again"), keep: true);
        }

        if (meaning != "digits:go" && !grammars.EndsWithGo(words))
        {
            return Speak(state with { Digits = digits }, say.Phrase("voice.digits-so-far", ("digits", SpokenText.Digits(digits))), keep: true);
        }

        return SpelledNumber.Value(digits) is { } value && say.Pended(state, new(state.Fact!, value, ReadBacks.UnitOf(state)), "") is { } pending
            ? ReadBack(state with { Digits = "" }, pending)
            : Speak(state with { Digits = "" }, say.Phrase("voice.digits-clear"));
    }

    // Once: the question again. Twice, and a number is asked for: digit by digit. Again and again: nobody is talking to us.
    private VoiceStep Missed(VoiceState state, string? why = null)
    {
        var missed = Fresh(state) with { Misses = state.Misses + 1, Style = state.Style };
        if (missed.Misses >= rules.MostMisses)
        {
            return Speak(Sleep(missed), say.Phrase("voice.sleeps"), keep: true);
        }

        return missed.Misses >= rules.MissesBeforeDigits && missed.Fact is { IsQuantity: true }
            ? AskDigits(missed, why)
            : Repeated(missed, why ?? say.Phrase("voice.again"));
    }

    // Where only "continue" is waited for.
    private VoiceStep Unclear(VoiceState state, string hint) => state.Misses + 1 >= rules.MostMisses
        ? Speak(Sleep(state), say.Phrase("voice.sleeps"), keep: true)
        : Speak(state with { Misses = state.Misses + 1 }, hint, keep: true);

    private VoiceStep AskDigits(VoiceState state, string? why = null) => Speak(
        state with { Phase = VoicePhase.Digits, Digits = "" }, $"{why} {say.Phrase("voice.digits", ("unit", NumberText.Unit(ReadBacks.UnitOf(state))))}".Trim());

    private static VoiceStep Repeated(VoiceState state, string before) => Speak(state, $"{before} {ReplySpeech.Question(state.Asked)}".Trim());

    private static VoiceStep Repeat(VoiceState state) => new(state, state.Last);

    // keep: "say again" afterwards repeats what stood before, the question or the number.
    private static VoiceStep Speak(VoiceState state, string say, bool keep = false) => new(keep ? state : state with { Last = say }, say);

    private static VoiceState Fresh(VoiceState state) => state with
    {
        Phase = VoicePhase.Answer, Pending = null, Pair = null, Digits = "", UnclearAnswers = 0, Misses = 0,
    };
}
