using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Recognises a message that says where a leak was found: its first words say so, and the rest is the place.</summary>
internal sealed class LeakReader(Lexicon lexicon)
{
    private const int LongestPlace = 80;

    /// <summary>The place in the speaker's words, or null where the message says no such thing or asks.</summary>
    public string? Read(Message message)
    {
        var tokens = message.Tokens;
        var at = lexicon.Commands.AfterPoliteness(tokens);
        var length = lexicon.Leaks.Openings.LongestAt(tokens, at, out _);
        var (start, end) = (at + length, tokens.Count);
        while (end > start && tokens[end - 1].Kind == TokenKind.Stop)
        {
            end--;
        }

        if (length == 0 || start >= end || tokens.Any(t => t.Kind == TokenKind.Question))
        {
            return null;
        }

        var place = message.Text[tokens[start].Start..tokens[end - 1].End].Trim();
        return place.Length is > 1 and <= LongestPlace ? place : null;
    }
}
