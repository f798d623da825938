using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Reads a cylinder's tag behind the word for it: "14", "R3", "fourteen", "INV-07"; a number with a unit is a weight and no tag.</summary>
internal sealed class CylinderTagReader(Lexicon lexicon)
{
    private const int LongestTag = 16;

    private readonly UnitReader units = new(lexicon);
    private readonly RefrigerantReader refrigerants = new(lexicon);

    /// <summary>The tag in capitals and the token after it; null where none stands there.</summary>
    public (string? Tag, int End) Read(Message message, int at)
    {
        var tokens = message.Tokens;
        if (at >= tokens.Count || tokens[at].Kind is not (TokenKind.Word or TokenKind.Number or TokenKind.Symbol)
            || refrigerants.Read(message.Text, tokens, at) is { Name: { Sure: true, Designation: not null } })
        {
            return (null, at);
        }

        // As it is written, up to the next space or comma.
        var end = at + 1;
        while (end < tokens.Count && !tokens[end].SpaceBefore && tokens[end].Kind is TokenKind.Word or TokenKind.Number or TokenKind.Symbol)
        {
            end++;
        }

        var written = message.Text[tokens[at].Start..tokens[end - 1].End];
        if (written.Any(char.IsAsciiDigit) && written.Length <= LongestTag)
        {
            return units.Stands(tokens, end) || units.Stands(tokens, at + 1) ? (null, at) : (written.TrimStart('#').ToUpperInvariant(), end);
        }

        // "R three", "fourteen": a letter and a number, or a number in words.
        var letter = written.Length == 1 && char.IsAsciiLetter(written[0]) && end < tokens.Count ? written : "";
        var from = letter.Length == 1 ? end : at;
        var heard = lexicon.NumberReader.Read(message.Text, tokens, from, i => units.Stands(tokens, i));
        return heard is { Found: true, Value: >= 0 and < 100_000 } && heard.Value == Math.Floor(heard.Value) && !units.Stands(tokens, heard.End)
            ? (string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{letter.ToUpperInvariant()}{heard.Value:0}"), heard.End)
            : (null, at);
    }
}
