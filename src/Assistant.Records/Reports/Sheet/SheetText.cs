using System.Globalization;
using System.Text;

namespace Assistant.Records.Reports.Sheet;

/// <summary>
/// Text on its way to a page. What would move other text about or hide (control characters, direction overrides, lone
/// surrogates) is shown by its number instead; markup is left to the writer of the page, which escapes all of it.
/// </summary>
public readonly record struct SheetText
{
    public SheetText(string text) => Value = Cleaned(text);

    public string Value { get; }

    public bool IsEmpty => string.IsNullOrWhiteSpace(Value);

    public static implicit operator SheetText(string text) => new(text);

    public static SheetText ToSheetText(string text) => new(text);

    public override string ToString() => Value ?? "";

    private static string Cleaned(string text)
    {
        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (rune.Value is '\n' or '\r' or '\t' or 0x2028 or 0x2029)
            {
                clean.Append(' ');
            }
            else if (Moves(rune))
            {
                clean.Append(CultureInfo.InvariantCulture, $"[U+{rune.Value:X4}]");
            }
            else
            {
                clean.Append(rune);
            }
        }

        return clean.ToString();
    }

    // Unicode Bidirectional Algorithm (UAX 9), section 2: marks, embeddings, overrides and isolates; and all control characters.
    private static bool Moves(Rune rune) =>
        Rune.IsControl(rune) || rune.Value is 0x061C or 0x200E or 0x200F or (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) or 0xFEFF;
}
