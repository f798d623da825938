using System.Collections.Frozen;
using System.Globalization;
using System.Text;

namespace Assistant.Channels.Text;

/// <summary>
/// The alphabet of text messages (3GPP TS 23.038, GSM 7 bit default alphabet with its extension table) and what a message costs in it.
/// A character outside it would be sent as "?" by some gateways without a word, or halve the room of the whole message.
/// </summary>
public static class Gsm7
{
    /// <summary>The septets of a message in one segment.</summary>
    public const int OneSegment = 160;

    /// <summary>The septets of each segment where a message has several: the joining header takes the rest.</summary>
    public const int EachOfSeveral = 153;

    private const string Basic =
        "@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>?¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà";

    private const string Extension = "\f^{}\\[~]|€";

    // The tables of the framework that fold accents are not there where the program runs without a culture.
    private const string Accented = "ÀÁÂÃĀĂĄÈÊËĒĖĘĚÌÍÎÏĪĮİÒÓÔÕŌŐÙÚÛŪŮŰŲÝŸĆČĎĹĽŃŇŔŘŚŠŞŤŢŹŻŽĞĢĶĻŅáâãāăąêëēėęěíîïīįıóôõōőúûūůűųýÿćčďĺľńňŕřśšşťţźżžğģķļņ";
    private const string Bare = "AAAAAAAEEEEEEEIIIIIIIOOOOOOUUUUUUUYYCCDLLNNRRSSSTTZZZGGKLNaaaaaaeeeeeeiiiiiiooooouuuuuuyyccdllnnrrsssttzzzggkln";

    private static readonly FrozenDictionary<char, int> Septets =
        Basic.Select(c => (c, 1)).Concat(Extension.Select(c => (c, 2))).ToFrozenDictionary(p => p.Item1, p => p.Item2);

    private static readonly FrozenDictionary<char, string> Written = new Dictionary<char, string>
    {
        ['°'] = "", ['º'] = "", ['µ'] = "u", ['μ'] = "u", ['–'] = "-", ['—'] = "-", ['‑'] = "-", ['−'] = "-", ['‐'] = "-",
        ['“'] = "\"", ['”'] = "\"", ['„'] = "\"", ['«'] = "\"", ['»'] = "\"", ['‘'] = "'", ['’'] = "'", ['‚'] = "'", ['`'] = "'", ['´'] = "'",
        ['…'] = "...", ['·'] = ".", ['•'] = "-", ['×'] = "x", ['÷'] = "/", ['±'] = "+/-", ['≈'] = "~", ['≤'] = "<=", ['≥'] = ">=", ['→'] = "->",
        ['½'] = "1/2", ['¼'] = "1/4", ['¾'] = "3/4", ['²'] = "2", ['³'] = "3", ['₂'] = "2", ['\t'] = " ", ['\u00A0'] = " ", ['\u202F'] = " ", ['\u2009'] = " ",
        ['ø'] = "ø", ['œ'] = "oe", ['Œ'] = "OE", ['ł'] = "l", ['Ł'] = "L", ['đ'] = "d", ['ç'] = "c", ['δ'] = "Δ", ['ω'] = "Ω",
    }.ToFrozenDictionary();

    /// <summary>True where every character can be sent.</summary>
    public static bool Holds(string text) => text.All(Septets.ContainsKey);

    /// <summary>The septets the text takes.</summary>
    /// <exception cref="ArgumentException">A character stands outside the alphabet.</exception>
    public static int Length(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Sum(Cost);
    }

    /// <summary>In how many segments the text goes out; a character of two septets is not torn apart between two.</summary>
    /// <exception cref="ArgumentException">A character stands outside the alphabet.</exception>
    public static int Segments(string text)
    {
        if (Length(text) <= OneSegment)
        {
            return text.Length == 0 ? 0 : 1;
        }

        var (segments, used) = (1, 0);
        foreach (var cost in text.Select(Cost))
        {
            if (used + cost > EachOfSeveral)
            {
                (segments, used) = (segments + 1, 0);
            }

            used += cost;
        }

        return segments;
    }

    /// <summary>The text in the alphabet: what has a plain way of writing is written so, accents drop where the alphabet lacks them, the rest is "?".</summary>
    public static string Transliterate(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var plain = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            plain.Append(rune.IsBmp ? Transliterate((char)rune.Value) : "?");
        }

        return plain.ToString();
    }

    private static string Transliterate(char letter)
    {
        if (Written.TryGetValue(letter, out var written))
        {
            return written;
        }

        if (Septets.ContainsKey(letter))
        {
            return letter == '\f' ? " " : letter.ToString();
        }

        if (char.GetUnicodeCategory(letter) is UnicodeCategory.NonSpacingMark or UnicodeCategory.Control or UnicodeCategory.Format)
        {
            return "";
        }

        var at = Accented.IndexOf(letter, StringComparison.Ordinal);
        return at >= 0 ? Bare[at].ToString() : "?";
    }

    private static int Cost(char letter) =>
        Septets.TryGetValue(letter, out var cost) ? cost : throw new ArgumentException($"U+{(int)letter:X4} is not in the alphabet of text messages.", nameof(letter));
}
