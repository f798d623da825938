using System.Text.RegularExpressions;
using Assistant.Dialogue.Replies;

namespace Assistant.Channels.Text;

/// <summary>
/// A reply as a text message: the verdict first, the numbers repeated, the caution, the question last and behind it what else is wanted
/// at this place. One segment where it can be, two at most unless all was asked for. What does not fit is left out from the least needed
/// on: the question last, and a caution never.
/// </summary>
public sealed partial class TextShape(PhraseBook book)
{
    /// <summary>The most that is sent where all was asked for.</summary>
    public const int MostSegments = 8;

    private readonly TextWords words = new(book);

    /// <summary>The words to be sent, all of them in the alphabet of text messages.</summary>
    public string Of(Reply reply)
    {
        ArgumentNullException.ThrowIfNull(reply);
        var (roomy, tight) = (Pieces(reply, isTight: false), Pieces(reply, isTight: true));
        if (reply.IsWhole)
        {
            return Fitted(roomy, MostSegments);
        }

        return Fits(roomy, 1) ? Fitted(roomy, 1)
            : Fits(tight, 1) ? Fitted(tight, 1)
            : Fits(roomy, 2) ? Fitted(roomy, 2)
            : Fitted(tight, 2);
    }

    private static bool Fits(List<TextPiece> pieces, int segments) => Gsm7.Segments(Joined(pieces.Where(p => p.Need >= TextNeed.Should))) <= segments;

    private List<TextPiece> Pieces(Reply reply, bool isTight) =>
        [.. TextPieces.Of(reply, words, isTight).Select(p => p with { Text = Compact(p.Text) }).Where(p => p.Text.Length > 0)];

    // Takes the pieces in the order of their need while they fit, and says them in their own order.
    private static string Fitted(List<TextPiece> pieces, int segments)
    {
        var taken = pieces.Where(p => p.Need == TextNeed.Must).ToHashSet();
        foreach (var piece in pieces.Where(p => p.Need != TextNeed.Must).OrderByDescending(p => p.Need))
        {
            var fitting = piece;
            while (fitting is not null && Gsm7.Segments(Joined(pieces.Select(p => p == piece ? fitting : p).Where(p => p == fitting || taken.Contains(p)))) > segments)
            {
                fitting = fitting.Shorter();
            }

            if (fitting is not null)
            {
                pieces[pieces.IndexOf(piece)] = fitting;
                taken.Add(fitting);
            }
        }

        return Joined(pieces.Where(taken.Contains));
    }

    private static string Joined(IEnumerable<TextPiece> pieces) => string.Join(' ', pieces.Select(p => p.Text));

    /// <summary>Degrees and kelvins close up to their number and lose their sign; the rest goes into the alphabet.</summary>
    private static string Compact(string text) => Gsm7.Transliterate(Degrees().Replace(text, "$1")).Trim();

    [GeneratedRegex(@"(?<=\d)\s?°?\s?([FCK])\b")]
    private static partial Regex Degrees();
}
