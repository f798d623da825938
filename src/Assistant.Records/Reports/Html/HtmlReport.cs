using System.Text.Encodings.Web;
using System.Text.Unicode;
using Assistant.Records.Plots.Drawing;
using Assistant.Records.Reports.Sheet;
using Fluid;

namespace Assistant.Records.Reports.Html;

/// <summary>
/// A report as one HTML page that needs nothing else and runs nothing: the pictures are inside, the content security policy
/// allows no script. Every text is escaped as it is written.
/// </summary>
public static class HtmlReport
{
    private static readonly IFluidTemplate Template = new FluidParser().Parse(Resources.Text("templates/report.liquid"));
    private static readonly HtmlEncoder Encoder = HtmlEncoder.Create(UnicodeRanges.All);
    private static readonly string Style = Resources.Text("templates/report.css");

    // On a phone a column of that share takes the whole width.
    private const int Wide = 4;

    public static string Write(ReportSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var context = new TemplateContext(new TemplateOptions { MaxSteps = 10_000_000 });
        context.SetValue("title", sheet.Title.Value);
        context.SetValue("style", Style);
        context.SetValue("parts", new[] { Part("customer", sheet.Customer), Part("office", sheet.Office) });
        return Template.Render(context, Encoder);
    }

    private static Dictionary<string, object?> Part(string name, IEnumerable<SheetBlock> blocks) =>
        new() { ["name"] = name, ["blocks"] = blocks.Select(Block).ToArray() };

    private static Dictionary<string, object?> Block(SheetBlock block)
    {
        Dictionary<string, object?> model = block switch
        {
            Heading b => new() { ["level"] = b.Level, ["text"] = b.Text.Value },
            Particulars b => new() { ["lines"] = b.Lines.Select(l => new Dictionary<string, object?> { ["name"] = l.Name.Value, ["value"] = l.Value.Value }).ToArray() },
            Lead b => new() { ["text"] = b.Text.Value },
            Paragraph b => new() { ["text"] = b.Text.Value },
            Note b => new() { ["text"] = b.Text.Value },
            Bullets b => new() { ["items"] = b.Items.Select(i => i.Value).ToArray() },
            Table b => new() { ["columns"] = b.Columns.Select(c => ColumnOf(b, c)).ToArray(), ["rows"] = b.Rows.Select(r => RowOf(b, r)).ToArray() },
            Figure b => new() { ["small"] = b.IsSmall, ["svg"] = SvgPen.Draw(b.Plot, b.IsSmall ? "customer" : "office"), ["caption"] = new SheetText(b.Plot.Alt).Value },
            Gallery b => new() { ["pictures"] = b.Pictures.Select(p => Picture(p.Picture, p.Caption)).ToArray() },
            _ => throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name, "A block without a way to write it."),
        };
        model["kind"] = block.GetType().Name;
        return model;
    }

    private static Dictionary<string, object?> ColumnOf(Table table, Column column) => new()
    {
        ["header"] = column.Header.Value,
        ["percent"] = Math.Round(100.0 * column.Share / table.Columns.Sum(c => c.Share), 2),
    };

    private static Dictionary<string, object?> RowOf(Table table, Row row) => new()
    {
        ["struck"] = row.IsStruck,
        ["cells"] = row.Cells.Select((cell, i) => new Dictionary<string, object?> { ["text"] = cell.Value, ["label"] = table.Columns[i].Header.Value, ["wide"] = table.Columns[i].Share >= Wide }).ToArray(),
    };

    private static Dictionary<string, object?> Picture(Model.ReportedPicture picture, SheetText caption) => new()
    {
        ["data"] = picture.Jpeg is null ? null : Convert.ToBase64String(picture.Jpeg),
        ["width"] = picture.Width,
        ["height"] = picture.Height,
        ["caption"] = caption.Value,
    };
}
