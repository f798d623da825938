using Assistant.Dialogue.Replies;

namespace Assistant.Channels.Text;

/// <summary>How much a message needs a piece.</summary>
internal enum TextNeed
{
    /// <summary>On "why" and "more".</summary>
    Reason,

    /// <summary>What follows from the numbers, and where the walk goes.</summary>
    May,

    /// <summary>What else can be said along.</summary>
    Helps,

    /// <summary>The verdict, the numbers taken, the answer to a question: cut at a word only where the cautions leave no room.</summary>
    Should,

    /// <summary>The question: left out only where the cautions leave no room for it.</summary>
    Asked,

    /// <summary>A caution.</summary>
    Must,
}

/// <summary>One piece of a text message.</summary>
/// <param name="Cut">How it is made shorter, or null where it is said whole or not at all.</param>
internal sealed record TextPiece(string Text, TextNeed Need, Func<string, string?>? Cut = null)
{
    public TextPiece? Shorter() => Cut?.Invoke(Text) is { Length: > 0 } shorter ? this with { Text = shorter } : null;
}

/// <summary>Takes a reply apart into the pieces of a text message, in the order they are said.</summary>
internal static class TextPieces
{
    /// <param name="isTight">True to say the cautions in the fewest words.</param>
    public static IEnumerable<TextPiece> Of(Reply reply, TextWords words, bool isTight)
    {
        var parts = reply.Parts.IsDefaultOrEmpty && !reply.Say.IsEmpty ? [new SaidPart("answer", null, reply.Say)] : reply.Parts.IsDefault ? [] : reply.Parts;
        foreach (var verdict in parts.Where(p => Is(p, "verdict.")))
        {
            yield return new(verdict.Text.Brief, TextNeed.Should);
        }

        if (Echo([.. parts.Where(p => Is(p, "taken.") && p.Fact is not null)], words) is { Length: > 0 } echo)
        {
            yield return new(echo, TextNeed.Should, CutWord);
        }

        foreach (var part in parts.Where(p => !Is(p, "verdict.") && !(Is(p, "taken.") && p.Fact is not null)))
        {
            var text = part.Fact is { } fact && Is(part, "late.", "question.", "differ.noted", "differ.agrees", "differ.settled") ? $"{words.Label(fact)} {part.Text.Brief}" : part.Text.Brief;
            yield return IsAside(part) ? new(text, TextNeed.May) : new(text, TextNeed.Should, CutWord);
        }

        foreach (var because in reply.Because)
        {
            yield return new(reply.IsWhole ? because.Full : because.Brief.TrimEnd('.') + ".", reply.IsWhole ? TextNeed.Should : TextNeed.Reason);
        }

        if (!reply.Cautions.IsEmpty)
        {
            yield return new(words.Caution + string.Join(' ', reply.Cautions.Select(c => isTight ? words.Warning(c) : c.Text.Brief)), TextNeed.Must);
        }

        if (reply.Ask is { IsEmpty: false } ask)
        {
            yield return new(ask.Brief, TextNeed.Asked);
        }

        if (!reply.AlsoWanted.IsDefaultOrEmpty && reply.Ask is not null)
        {
            yield return new(words.Also + string.Join(", ", reply.AlsoWanted.Select(words.Label)) + ".", TextNeed.Helps, CutLastOfList);
        }
    }

    private static string Echo(List<SaidPart> taken, TextWords words) =>
        taken.Count == 0 ? "" : string.Join(", ", taken.Select(p => $"{words.Label(p.Fact!)} {Lower(p.Text.Brief.TrimEnd('.'))}")) + ".";

    // The phrase began a sentence; here it stands in a list. "TXV" and "R404A" stay as they are.
    private static string Lower(string text) => text.Length > 1 && char.IsUpper(text[0]) && char.IsLower(text[1]) ? char.ToLowerInvariant(text[0]) + text[1..] : text;

    private static bool IsAside(SaidPart part) => part.Key.Length == 0 || Is(part, "derived.", "found.", "open.", "handover.", "walk.", "taken.confirmed");

    private static bool Is(SaidPart part, params ReadOnlySpan<string> beginnings)
    {
        foreach (var beginning in beginnings)
        {
            if (part.Key.StartsWith(beginning, StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    private static string? CutWord(string text)
    {
        var bare = text.EndsWith("..", StringComparison.Ordinal) ? text[..^2] : text;
        var at = bare.TrimEnd().LastIndexOf(' ');
        return at > 0 ? bare[..at].TrimEnd(',', '.', ' ') + ".." : null;
    }

    private static string? CutLastOfList(string text)
    {
        var at = text.LastIndexOf(", ", StringComparison.Ordinal);
        return at > 0 ? text[..at] + "." : null;
    }
}
