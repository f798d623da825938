using Assistant.Voice.Grammars;
using Assistant.Voice.Hearing;

namespace Assistant.Voice.Dialogues;

/// <summary>Where the talk by voice draws its lines. Margins are in log units per 10 ms frame, set on other voices than they are tested on.</summary>
public sealed record VoiceRules
{
    /// <summary>How much better than any "no" a "yes" must fit before a value is stored, or before a walk that was offered begins.</summary>
    public double LeastYesMargin { get; init; } = 2;

    /// <summary>How much better than all else a command must fit to be taken without a read-back.</summary>
    public double LeastWordMargin { get; init; } = 2;

    /// <summary>
    /// The same for a command, or a control such as "stop" and "slower", where an answer was asked for: nobody need have given one. Of
    /// twelve answers taken for one in calibration one was over 6, of the commands said some nineteen in twenty over 8.
    /// </summary>
    public double LeastCommandMargin { get; init; } = 6;

    /// <summary>The least <see cref="Heard.Fit"/> of such a command: what 19 of 20 commands of the calibration reached in quiet.</summary>
    public double LeastCommandFit { get; init; } = -7;

    /// <summary>The least <see cref="Heard.Fit"/> of a call for help that is passed on at once; under it, it is asked about. Of the calibration 50 of 54 reach it, near a fan too.</summary>
    public double LeastEmergencyFit { get; init; } = -10;

    /// <summary>The least fit of one that is asked about; other talk of the calibration reached -19 at the most.</summary>
    public double LeastAskedEmergencyFit { get; init; } = -15;

    /// <summary>How much better than the number it sounds like a number must fit not to be asked about by name.</summary>
    public double LeastPairMargin { get; init; } = 1;

    public int MissesBeforeDigits { get; init; } = 2;

    /// <summary>Misses in a row after which it waits for its name.</summary>
    public int MostMisses { get; init; } = 5;

    /// <summary>Unclear answers to a read-back after which the value is dropped.</summary>
    public int MostUnclearAnswers { get; init; } = 3;

    /// <summary>Whether a phrase is told clearly enough from all else that could have been said to be acted on without a read-back.</summary>
    public bool IsClear(VoiceState state, Heard heard, string meaning)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(heard);
        ArgumentNullException.ThrowIfNull(meaning);
        return state.Asks && SpeechGrammar.IsUnasked(meaning)
            ? heard.Margin >= LeastCommandMargin && heard.Fit >= LeastCommandFit
            : heard.Margin >= (meaning is "accept" or OfferedChoices.Begin ? LeastYesMargin : LeastWordMargin);
    }

    /// <summary>Whether a call for help is one for certain.</summary>
    public bool IsEmergency(Heard heard)
    {
        ArgumentNullException.ThrowIfNull(heard);
        return heard.Fit >= LeastEmergencyFit;
    }
}
