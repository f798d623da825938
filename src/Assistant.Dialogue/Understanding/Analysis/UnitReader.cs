using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Text;
using Assistant.Dialogue.Understanding.Units;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Reads the unit that stands at a token.</summary>
internal sealed class UnitReader(Lexicon lexicon)
{
    /// <summary>The unit's meanings and the token after it; none where no unit stands there.</summary>
    public (IReadOnlyList<UnitWord> Units, int End) Read(IReadOnlyList<Token> tokens, int at)
    {
        var length = lexicon.Units.Units.LongestAt(tokens, at, out var found);
        if (length == 0 || IsLongerName(tokens, at, length) || (found.All(u => u.Everyday) && !EverydayStands(tokens, at, length)))
        {
            return ([], at);
        }

        return (found, at + length);
    }

    /// <summary>Whether a unit surely stands there: no word that is mostly something else.</summary>
    public bool Stands(IReadOnlyList<Token> tokens, int at) =>
        lexicon.Units.Units.LongestAt(tokens, at, out var found) > 0 && found.Any(u => !u.Everyday);

    /// <summary>Whether a unit of mass or time stands there: "a pound", "an hour".</summary>
    public bool CountsByArticle(IReadOnlyList<Token> tokens, int at) =>
        lexicon.Units.Units.LongestAt(tokens, at, out var found) > 0
        && found.Any(u => !u.Everyday && u.Unit?.Dimension is Dimension.Mass or Dimension.Time);

    // "38 second thermometer": the name of a fact is longer than the unit.
    private bool IsLongerName(IReadOnlyList<Token> tokens, int at, int length) =>
        lexicon.Facts.Names.LongestAt(tokens, at, out _) > length;

    // "5 in" and "8.2 a" at the end of what is told; not "5 in the box".
    private static bool EverydayStands(IReadOnlyList<Token> tokens, int at, int length) =>
        !tokens[at].SpaceBefore || at + length == tokens.Count || tokens[at + length].EndsClause;
}
