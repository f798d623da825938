namespace Assistant.Dialogue.Understanding.Text;

internal enum TokenKind
{
    Word,

    /// <summary>A number in digits.</summary>
    Number,

    /// <summary>A sign that can mean something: # " ° / - + ± and the like.</summary>
    Symbol,

    /// <summary>A pause inside a sentence: comma, bracket, line end.</summary>
    Pause,

    /// <summary>The end of a sentence.</summary>
    Stop,

    /// <summary>A question mark, which ends a sentence too.</summary>
    Question,

    /// <summary>A time of day, a phone number: digits that no reading is made of.</summary>
    Clock,

    /// <summary>Letters or digits of another script.</summary>
    Foreign,

    /// <summary>Markup or programming: nothing a technician says.</summary>
    Code,
}

/// <summary>How a number stands in digits, as far as that decides what it is worth.</summary>
internal enum NumberForm
{
    Plain,

    /// <summary>One comma and exactly three digits: thousands at a US site, open at a metric one.</summary>
    ThousandsComma,

    /// <summary>A vulgar fraction sign such as ½.</summary>
    Fraction,

    /// <summary>Digits that are no number, such as 3.4.5.</summary>
    Malformed,
}

/// <summary>One word, number or sign of a message.</summary>
/// <param name="Word">The word's number in the lexicon, or -1 for a word the lexicon does not know; set for words and symbols.</param>
/// <param name="SpaceBefore">Whether it stands apart from what is before it.</param>
/// <param name="Value">The number's value where <paramref name="Kind"/> is a number.</param>
internal readonly record struct Token(TokenKind Kind, int Word, int Start, int End, bool SpaceBefore, double Value = 0, NumberForm Form = NumberForm.Plain)
{
    public bool IsWord(int word) => Word == word && word >= 0;

    /// <summary>Whether a clause ends here.</summary>
    public bool EndsClause => Kind is TokenKind.Pause or TokenKind.Stop or TokenKind.Question;

    public bool EndsSentence => Kind is TokenKind.Stop or TokenKind.Question;
}
