using System.Globalization;
using PdfSharp.Drawing;

namespace Assistant.Records.Reports.Pdf;

/// <summary>Breaks text into lines of a width: at spaces, and inside a word that is wider than a line.</summary>
internal sealed class LineBreaker(XGraphics graphics)
{
    private readonly Dictionary<(XFont Font, string Element), double> widths = [];

    public List<string> Break(string text, XFont font, double width)
    {
        List<string> lines = [];
        var line = "";
        var taken = 0.0;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(word => Pieces(word, font, width)))
        {
            var needed = Width(word, font);
            var space = line.Length == 0 ? 0 : Width(" ", font);
            if (line.Length > 0 && taken + space + needed > width)
            {
                lines.Add(line);
                (line, taken, space) = ("", 0, 0);
            }

            line = line.Length == 0 ? word : line + " " + word;
            taken += space + needed;
        }

        if (line.Length > 0 || lines.Count == 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    private IEnumerable<string> Pieces(string word, XFont font, double width)
    {
        if (Width(word, font) <= width)
        {
            yield return word;
            yield break;
        }

        var piece = "";
        var taken = 0.0;
        foreach (var element in Elements(word))
        {
            var needed = WidthOf(element, font);
            if (piece.Length > 0 && taken + needed > width)
            {
                yield return piece;
                (piece, taken) = ("", 0);
            }

            piece += element;
            taken += needed;
        }

        yield return piece;
    }

    private double Width(string text, XFont font) => Elements(text).Sum(element => WidthOf(element, font));

    private double WidthOf(string element, XFont font)
    {
        if (!widths.TryGetValue((font, element), out var width))
        {
            width = graphics.MeasureString(element, font).Width;
            widths[(font, element)] = width;
        }

        return width;
    }

    private static IEnumerable<string> Elements(string text)
    {
        var elements = StringInfo.GetTextElementEnumerator(text);
        while (elements.MoveNext())
        {
            yield return elements.GetTextElement();
        }
    }
}
