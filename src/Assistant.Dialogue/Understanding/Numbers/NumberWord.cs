namespace Assistant.Dialogue.Understanding.Numbers;

/// <summary>What part of a spoken number a word can be.</summary>
internal enum NumberPart
{
    Zero,
    Digit,
    Teen,
    Tens,
    Hundred,
    Thousand,

    /// <summary>half, quarter: "three quarters", "and a half".</summary>
    Fraction,

    /// <summary>Settled by the number recogniser alone: thirds, eighths, dozen, million.</summary>
    Rare,

    /// <summary>"oh" and "o": nought, but only between digits.</summary>
    Oh,

    /// <summary>to, for, ate, won: digits as speech recognition spells them, only inside a number or before a unit.</summary>
    Homophone,
    Point,
    And,
    Of,
    Article,
}

/// <summary>A word's part in a spoken number and what it is worth there.</summary>
/// <param name="LeavesOpen">At the end of a message it may be a digit or the start of something cut off ("thirty to").</param>
internal readonly record struct NumberWord(NumberPart Part, double Value = 0, bool LeavesOpen = false);
