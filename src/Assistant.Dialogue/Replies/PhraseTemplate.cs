using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Replies;

/// <summary>One form of a phrase, cut once into its fixed text and its placeholders.</summary>
internal sealed partial class PhraseTemplate
{
    private readonly ImmutableArray<Piece> pieces;

    private PhraseTemplate(ImmutableArray<Piece> pieces)
    {
        this.pieces = pieces;
        Names = [.. pieces.Where(p => p.IsPlaceholder).Select(p => p.Text).Distinct()];
    }

    public ImmutableArray<string> Names { get; }

    /// <summary>The text of a phrase without placeholders.</summary>
    public string Plain => string.Concat(pieces.Select(p => p.Text));

    public static bool TryParse(string text, [NotNullWhen(true)] out PhraseTemplate? template, out string wrong)
    {
        var pieces = ImmutableArray.CreateBuilder<Piece>();
        var at = 0;
        foreach (Match match in Placeholder().Matches(text))
        {
            pieces.Add(new(text[at..match.Index], IsPlaceholder: false, AsPercent: false));
            pieces.Add(new(match.Groups["name"].Value, IsPlaceholder: true, match.Groups["format"].Success));
            at = match.Index + match.Length;
        }

        pieces.Add(new(text[at..], IsPlaceholder: false, AsPercent: false));
        var loose = pieces.Any(p => !p.IsPlaceholder && p.Text.AsSpan().ContainsAny('{', '}'));
        wrong = loose ? "a placeholder is written {name} or {name:percent}, the name in small letters, digits and _" : "";
        template = loose ? null : new(pieces.ToImmutable());
        return !loose;
    }

    public string Fill(string key, UnitSystem units, ReadOnlySpan<ReasonPart> parts, PhraseBook book, PhraseForm form)
    {
        var text = new StringBuilder();
        foreach (var piece in pieces)
        {
            text.Append(piece.IsPlaceholder ? Part(key, piece, units, parts, book, form) : piece.Text);
        }

        // A sentence that opens with a placeholder still opens with a capital.
        if (pieces[0].Text.Length == 0 && text.Length > 0)
        {
            text[0] = char.ToUpperInvariant(text[0]);
        }

        return text.ToString();
    }

    private static string Part(string key, Piece piece, UnitSystem units, ReadOnlySpan<ReasonPart> parts, PhraseBook book, PhraseForm form)
    {
        foreach (var part in parts)
        {
            if (part.Name != piece.Text)
            {
                continue;
            }

            if (part.Amount is not { } amount)
            {
                return form == PhraseForm.Spoken ? book.WordAloud(part.Word ?? "") : book.Word(part.Word ?? "", form == PhraseForm.Brief);
            }

            return piece.AsPercent
                ? Math.Round(amount.Canonical * 100).ToString(CultureInfo.InvariantCulture) + " %"
                : AmountText.Written(amount, units);
        }

        throw new KeyNotFoundException($"Phrase '{key}' wants {{{piece.Text}}}, which was not given.");
    }

    [GeneratedRegex(@"\{(?<name>[a-z][a-z0-9_]*)(?<format>:percent)?\}")]
    private static partial Regex Placeholder();

    private readonly record struct Piece(string Text, bool IsPlaceholder, bool AsPercent);
}
