using Assistant.Records.Reports.Sheet;
using PdfSharp.Drawing;

namespace Assistant.Records.Reports.Pdf;

/// <summary>Sets a table: the header again on every page, a row that is longer than a page goes on over the next.</summary>
internal sealed class TableSetter
{
    private const double Gap = 8;
    private const double LineHeight = 12;
    private const double Padding = 3;

    private readonly PageFlow flow;
    private readonly Table table;
    private readonly XFont font = ReportFonts.Of(8.5);
    private readonly double[] lefts;
    private readonly double[] widths;

    public TableSetter(PageFlow flow, Table table)
    {
        (this.flow, this.table) = (flow, table);
        var share = (flow.Width - (Gap * (table.Columns.Length - 1))) / table.Columns.Sum(c => c.Share);
        widths = [.. table.Columns.Select(c => c.Share * share)];
        lefts = [.. widths.Select((_, i) => flow.Left + widths.Take(i).Sum() + (Gap * i))];
    }

    public void Set()
    {
        flow.Need(LineHeight * 4);
        Header();
        foreach (var row in table.Rows)
        {
            SetRow(row);
        }

        flow.Y += 4;
    }

    private void Header()
    {
        var cells = table.Columns.Select((column, i) => flow.Lines.Break(column.Header.Value, font, widths[i])).ToList();
        foreach (var line in Enumerable.Range(0, cells.Max(c => c.Count)))
        {
            Draw(cells, line, XBrushes.DimGray, isStruck: false);
        }

        Rule(XColors.Gray);
    }

    private void SetRow(Row row)
    {
        var cells = row.Cells.Select((cell, i) => flow.Lines.Break(cell.Value, font, widths[i])).ToList();
        var lines = cells.Max(c => c.Count);
        Room(Math.Min(lines, 8));
        for (var line = 0; line < lines; line++)
        {
            Room(1);
            Draw(cells, line, row.IsStruck ? XBrushes.DimGray : XBrushes.Black, row.IsStruck);
        }

        Rule(XColors.LightGray);
    }

    private void Room(int lines)
    {
        if (flow.Room < (lines * LineHeight) + (2 * Padding) && !flow.IsFresh)
        {
            flow.NewPage();
            Header();
        }
    }

    private void Draw(List<List<string>> cells, int line, XBrush brush, bool isStruck)
    {
        for (var i = 0; i < cells.Count; i++)
        {
            if (line >= cells[i].Count || cells[i][line].Length == 0)
            {
                continue;
            }

            flow.Graphics.DrawString(cells[i][line], font, brush, lefts[i], flow.Y + font.Size + 1);
            // The remark, last, says why the rest is struck.
            if (isStruck && i < cells.Count - 1)
            {
                var middle = flow.Y + (font.Size * 0.7) + 1;
                flow.Graphics.DrawLine(new XPen(XColors.DimGray, 0.7), lefts[i], middle, lefts[i] + flow.Graphics.MeasureString(cells[i][line], font).Width, middle);
            }
        }

        flow.Y += LineHeight;
    }

    private void Rule(XColor color)
    {
        flow.Y += Padding;
        flow.Graphics.DrawLine(new XPen(color, 0.5), flow.Left, flow.Y, flow.Left + flow.Width, flow.Y);
        flow.Y += Padding;
    }
}
