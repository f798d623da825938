using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
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
public sealed class VoiceDialogue
{
    private readonly QuestionGrammars grammars;
    private readonly PhraseBook phrases;
    private readonly VoiceRules rules;
    private readonly ReadBacks say;
    private readonly Listening listening;
    private readonly Offers offers;
    private readonly ReplyTelling telling;

    public VoiceDialogue(QuestionGrammars grammars, PhraseBook phrases, Understander understander, VoiceRules? rules = null)
    {
        (this.grammars, this.phrases, this.rules) = (grammars, phrases, rules ?? new());
        say = new(grammars, phrases, understander);
        listening = new(grammars, say);
        offers = new(grammars, phrases, say, this.rules);
        telling = new(phrases);
    }

    /// <summary>Where the talk begins, or begins again: what is asked now is said.</summary>
    public VoiceStep Start(Reply asked, UnitSystem units, VoiceState? before = null) =>
        Answered(new VoiceState { Asked = asked, Units = units, Style = before?.Style ?? new(), Unheard = before?.Unheard ?? [] }, asked);

    /// <summary>The conversation has answered.</summary>
    public VoiceStep Answered(VoiceState state, Reply reply)
    {
        ArgumentNullException.ThrowIfNull(state);
        return telling.Tell(state.Fresh, reply);
    }

    /// <summary>Somebody else answered what was pending: it is dropped, and the new question asked.</summary>
    public VoiceStep MovedOn(VoiceState state, Reply now)
    {
        ArgumentNullException.ThrowIfNull(state);
        return telling.Tell(state.Fresh, now, say.Phrase("voice.moved-on"));
    }

    /// <summary>Nobody has spoken for long: it waits for its name, and then asks again.</summary>
    public static VoiceState Sleep(VoiceState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state.Fresh with { Phase = VoicePhase.WakeWord, Last = ReplySpeech.Question(state.Asked) };
    }

    /// <summary>What is listened for now.</summary>
    public SpeechGrammar Grammar(VoiceState state) => listening.Grammar(state);

    /// <summary>What is listened for while the assistant speaks.</summary>
    public SpeechGrammar WhileSpeaking => grammars.Control;

    /// <summary>What a sound must be told apart from before these words are acted on; null for words that are read back anyway.</summary>
    public SpeechGrammar? Rivals(VoiceState state, string words) => listening.Rivals(state, words);

    /// <summary>What was asked for, where these words are something nobody asked for; otherwise null.</summary>
    public SpeechGrammar? Instead(VoiceState state, string words) => listening.Instead(state, words);

    /// <summary>Whether words are whole, so that no more need be waited for: a number with its unit, or a phrase that none of another meaning begins with.</summary>
    public bool IsWhole(VoiceState state, string words) => listening.IsWhole(state, words);

    /// <summary>Something was heard while the assistant speaks: only what stops or changes its speech counts.</summary>
    public VoiceStep HearWhileSpeaking(VoiceState state, Heard heard) =>
        heard?.Accepted is { } words && grammars.Control.MeaningOf(words) is { } meaning
            ? meaning == "command:emergency" ? Emergency(state, heard, words) : Control(state, meaning) ?? new(state, "")
            : new(state, "");

    public VoiceStep Hear(VoiceState state, Heard heard)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(heard);
        if (heard.Kind == HeardKind.Noise)
        {
            return new(state, "");
        }

        var meaning = heard.Accepted is { } words ? Grammar(state).MeaningOf(words) : null;
        if (meaning is not null && SpeechGrammar.IsUnasked(meaning))
        {
            if (meaning == "command:emergency")
            {
                return state.Phase == VoicePhase.WakeWord && heard.Asked?.Accepted is not null && !rules.IsEmergency(heard)
                    ? Hear(state, heard.Asked)
                    : Emergency(state, heard, heard.Words!);
            }

            if (state.Phase == VoicePhase.Answer && !rules.IsClear(state, heard, meaning))
            {
                return Unclear(state, heard, meaning);
            }

            if (Control(state, meaning) is { } control)
            {
                return control;
            }
        }

        return state.Phase switch
        {
            VoicePhase.WakeWord => meaning != "wake" ? new(state, "") : state.Unheard.IsEmpty ? VoiceStep.Repeat(state.Fresh) : telling.GoOn(state.Fresh),
            VoicePhase.GoingOn => meaning is "command:resume" or "accept" ? telling.GoOn(state.Fresh) : AskToGoOn(state),
            VoicePhase.Resuming => meaning == "command:resume" ? VoiceStep.Repeat(state with { Phase = state.Interrupted }) : new(state, ""),
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
                return VoiceStep.Repeat(state with { Style = state.Style.Slower });
            case "control:faster":
                return VoiceStep.Repeat(state with { Style = state.Style.Faster });
            case "control:louder":
                return VoiceStep.Repeat(state with { Style = state.Style.Louder });
            case "control:digits" when state is { Phase: VoicePhase.Answer, Fact.IsQuantity: true }:
                return AskDigits(state);
            case "command:repeat":
                return VoiceStep.Repeat(state);
            case "command:pause" when state.Phase != VoicePhase.Resuming:
                return VoiceStep.Speak(state with { Phase = VoicePhase.Resuming, Interrupted = state.Phase }, say.Phrase("voice.waits"), keep: true);
            default:
                return null;
        }
    }

    // Nobody waits for an emergency to be confirmed whose words fit; where they hardly do, one question more is better than an alarm for nothing, and than none.
    private VoiceStep Emergency(VoiceState state, Heard heard, string words) =>
        rules.IsEmergency(heard) ? new(state.Fresh, "", "emergency")
        : heard.Fit >= rules.LeastAskedEmergencyFit ? ReadBack(state.Fresh, new("emergency", words, null, "command:emergency"))
        : state.Phase is VoicePhase.WakeWord or VoicePhase.Resuming ? new(state, "")
        : Missed(state);

    // Where an answer was asked for, it is the likelier one: it is read back, and the command only after it was refused.
    private VoiceStep Unclear(VoiceState state, Heard heard, string meaning)
    {
        var isAnswerRefused = state.Refused is { } refused && !SpeechGrammar.IsUnasked(refused);
        if (heard.Asked is { Accepted: { } answer } asked && !isAnswerRefused)
        {
            return Answer(state, asked, Grammar(state).MeaningOf(answer));
        }

        return meaning.StartsWith("control:", StringComparison.Ordinal) || meaning is "command:pause" or "command:resume" or "command:repeat"
            ? Missed(state)
            : ReadBack(state, new(say.Sent(meaning, heard.Words!), heard.Words!, null, meaning));
    }

    private VoiceStep Answer(VoiceState state, Heard heard, string? meaning)
    {
        if (heard.Accepted is not { } words)
        {
            return Missed(state);
        }

        if (meaning is null)
        {
            return say.Refrigerant(state, words) is { } named ? ReadBack(state, named) : NumberHeard(state, heard, words);
        }

        if (meaning == "command:more" && state.Rest.Length > 0)
        {
            var (now, waiting) = ReplySpeech.Portion(state.Rest, state.Style);
            return VoiceStep.Speak(state with { Rest = waiting }, now);
        }

        // A choice is a value too: in noise a wrong one can fit clearly, so it is read back like a number. A command is not stored as one.
        var pending = new Pending(say.Sent(meaning, words), words, null, meaning);
        return !SpeechGrammar.IsValue(meaning) && grammars.ConfirmedPhrase(meaning) is null && rules.IsClear(state, heard, meaning) ? new(state.Fresh, "", pending.Text) : ReadBack(state, pending);
    }

    private VoiceStep NumberHeard(VoiceState state, Heard heard, string words)
    {
        if (say.Number(state, words) is not { } pending)
        {
            return Missed(state);
        }

        // Where the sound does not tell "thirteen" from "thirty" clearly, both are named.
        return heard.Margin < rules.LeastPairMargin && NumberText.SoundsLike(words) is { } alike && say.Number(state, alike) is { } other && say.Impossible(other.Reading!) is null
            ? VoiceStep.Speak(state with { Phase = VoicePhase.Pair, Pair = (pending, other) }, say.WhichOf(pending, other))
            : ReadBack(state, pending);
    }

    private VoiceStep ReadBack(VoiceState state, Pending pending) => pending.Reading is { } reading && say.Impossible(reading) is { } why
        ? Missed(state, why)
        : VoiceStep.Speak(state with { Phase = VoicePhase.Confirmation, Pending = pending, UnclearAnswers = 0 }, say.Sentence(pending));

    private VoiceStep Which(VoiceState state, Heard heard, string? meaning) => (meaning, state.Pair) switch
    {
        ("pair:first", { } pair) => ReadBack(state, pair.First),
        ("pair:second", { } pair) => ReadBack(state, pair.Second),
        ("command:skip", _) => Answer(state.Fresh, heard, meaning),
        _ => Missed(state),
    };

    private VoiceStep Confirm(VoiceState state, Heard heard, string? meaning)
    {
        switch (meaning)
        {
            // A yes must be told clearly from every no; a no need not be told from a yes.
            case "accept" when heard.Margin >= rules.LeastYesMargin:
                return new(state.Fresh, "", state.Pending!.Text);
            case "reject":
                return Missed(state with { Refused = state.Pending!.Meaning });
            case "command:skip":
                return ReadBack(state.Fresh, new("skip", "skip", null, "command:skip"));
            default:
                return state.UnclearAnswers + 1 >= rules.MostUnclearAnswers
                    ? Missed(state with { Refused = null }, say.Phrase("voice.dropped"))
                    : VoiceStep.Speak(state with { UnclearAnswers = state.UnclearAnswers + 1 }, say.Phrase("voice.correct-or-wrong"), keep: true);
        }
    }

    private VoiceStep Spell(VoiceState state, Heard heard, string? meaning)
    {
        if (meaning == "digits:clear")
        {
            return VoiceStep.Speak(state with { Digits = "" }, say.Phrase("voice.digits-clear"));
        }

        if (meaning == "command:skip")
        {
            return Answer(state.Fresh, heard, meaning);
        }

        if (heard.Accepted is not { } words || SpelledNumber.Append(state.Digits, meaning is null ? words.Split(' ') : []) is not { } digits)
        {
            return state.Misses + 1 >= rules.MostMisses ? Missed(state) : VoiceStep.Speak(state with { Misses = state.Misses + 1 }, say.Phrase("voice.again"), keep: true);
        }

        if (meaning != "digits:go" && !grammars.EndsWithGo(words))
        {
            return VoiceStep.Speak(state with { Digits = digits }, say.Phrase("voice.digits-so-far", ("digits", SpokenText.Digits(digits))), keep: true);
        }

        return SpelledNumber.Value(digits) is { } value && say.Pended(state, new(state.Fact!, value, ReadBacks.UnitOf(state)), "") is { } pending
            ? ReadBack(state with { Digits = "" }, pending)
            : VoiceStep.Speak(state with { Digits = "" }, say.Phrase("voice.digits-clear"));
    }

    // Once: the question again. Twice, and a number is asked for: digit by digit. Again and again: nobody is talking to us.
    private VoiceStep Missed(VoiceState state, string? why = null)
    {
        if (state is { Phase: VoicePhase.Confirmation, Unheard.IsEmpty: false })
        {
            // No question is asked before the cautions that still wait.
            return telling.GoOn(state.Fresh);
        }

        var missed = state.Fresh with { Misses = state.Misses + 1, Refused = state.Phase == VoicePhase.Confirmation ? state.Refused : null, Offered = state.Offered };
        if (missed.Misses >= rules.MostMisses)
        {
            return VoiceStep.Speak(Sleep(missed), say.Phrase("voice.sleeps"), keep: true);
        }

        if (missed.Misses >= rules.MissesBeforeDigits && missed.Fact is { IsQuantity: true })
        {
            return AskDigits(missed, why);
        }

        return offers.For(missed) is { } offer
            ? VoiceStep.Speak(missed with { Offered = offer.Offered, Rest = offer.Waiting }, $"{why} {offer.Say}".Trim(), keep: true)
            : VoiceStep.AskAgain(missed, why ?? say.Phrase("voice.again"));
    }

    // Where only "continue" is waited for.
    private VoiceStep AskToGoOn(VoiceState state) => state.Misses + 1 >= rules.MostMisses
        ? VoiceStep.Speak(Sleep(state), say.Phrase("voice.sleeps"), keep: true)
        : VoiceStep.Speak(state with { Misses = state.Misses + 1 }, say.Phrase("voice.go-on"), keep: true);

    private VoiceStep AskDigits(VoiceState state, string? why = null) => VoiceStep.Speak(
        state with { Phase = VoicePhase.Digits, Digits = "" }, $"{why} {say.Phrase("voice.digits", ("unit", NumberText.Unit(ReadBacks.UnitOf(state))))}".Trim());
}
