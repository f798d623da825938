namespace Assistant.Voice.Dialogues;

/// <summary>Where the talk by voice draws its lines. Margins are in log units per 10 ms frame, set on other voices than they are tested on.</summary>
public sealed record VoiceRules
{
    /// <summary>How much better than any "no" a "yes" must fit before a value is stored.</summary>
    public double LeastYesMargin { get; init; } = 2;

    /// <summary>How much better than all else a command must fit to be taken without a read-back.</summary>
    public double LeastWordMargin { get; init; } = 2;

    /// <summary>How much better than the number it sounds like a number must fit not to be asked about by name.</summary>
    public double LeastPairMargin { get; init; } = 1;

    public int MissesBeforeDigits { get; init; } = 2;

    /// <summary>Misses in a row after which it waits for its name.</summary>
    public int MostMisses { get; init; } = 5;

    /// <summary>Unclear answers to a read-back after which the value is dropped.</summary>
    public int MostUnclearAnswers { get; init; } = 3;
}
