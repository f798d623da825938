using System.Collections.Immutable;
using System.Globalization;

namespace Assistant.Trade.Refrigerants;

/// <summary>
/// A tab-separated data file read strictly: comment lines first, then exactly the expected column names in their order,
/// then rows of as many cells. Anything else is a <see cref="TableFormatException"/> with file and line.
/// </summary>
internal sealed class TableFile
{
    private TableFile(int lines, ImmutableArray<string> comments, ImmutableArray<TableRow> rows)
    {
        Lines = lines;
        Comments = comments;
        Rows = rows;
    }

    public int Lines { get; }

    /// <summary>The comment lines before the columns, without their mark.</summary>
    public ImmutableArray<string> Comments { get; }

    public ImmutableArray<TableRow> Rows { get; }

    public static TableFile Read(TextReader text, string name, params ReadOnlySpan<string> columns)
    {
        var comments = ImmutableArray.CreateBuilder<string>();
        var rows = ImmutableArray.CreateBuilder<TableRow>();
        var line = 0;
        var header = false;
        while (text.ReadLine() is { } content)
        {
            line++;
            if (!header && content.StartsWith('#'))
            {
                comments.Add(content[1..].Trim());
            }
            else if (!header)
            {
                CheckColumns(content.Split('\t'), columns, name, line);
                header = true;
            }
            else
            {
                var cells = content.Split('\t');
                if (cells.Length != columns.Length)
                {
                    throw TableFormatException.At(name, line, $"{columns.Length} cells are expected, {cells.Length} are there");
                }

                rows.Add(new(name, line, cells));
            }
        }

        return header ? new(line, comments.ToImmutable(), rows.ToImmutable()) : throw TableFormatException.At(name, line, "no line with the column names");
    }

    private static void CheckColumns(ReadOnlySpan<string> found, ReadOnlySpan<string> expected, string name, int line)
    {
        foreach (var column in expected)
        {
            if (!found.Contains(column))
            {
                throw TableFormatException.At(name, line, $"column {column} is missing");
            }
        }

        foreach (var column in found)
        {
            if (!expected.Contains(column))
            {
                throw TableFormatException.At(name, line, $"column {column} is unknown");
            }
        }

        if (!found.SequenceEqual(expected))
        {
            throw TableFormatException.At(name, line, $"columns must stand in the order {string.Join(", ", expected.ToArray())}");
        }
    }
}

/// <summary>One row of a <see cref="TableFile"/>.</summary>
internal sealed class TableRow(string file, int line, string[] cells)
{
    public string Text(int column) => cells[column];

    /// <summary>The finite number in a cell.</summary>
    public double Number(int column) =>
        double.TryParse(cells[column], NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value)
            ? value
            : throw Wrong($"\"{cells[column]}\" is not a number");

    public TableFormatException Wrong(string what) => TableFormatException.At(file, line, what);
}
