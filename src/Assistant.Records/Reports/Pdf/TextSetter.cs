using Assistant.Records.Reports.Sheet;
using PdfSharp.Drawing;

namespace Assistant.Records.Reports.Pdf;

/// <summary>Sets running text.</summary>
internal sealed class TextSetter(PageFlow flow)
{
    private const double Leading = 1.35;

    private readonly XFont title = ReportFonts.Of(18, bold: true);
    private readonly XFont section = ReportFonts.Of(12, bold: true);
    private readonly XFont lead = ReportFonts.Of(13, bold: true);
    private readonly XFont body = ReportFonts.Of(10);
    private readonly XFont small = ReportFonts.Of(8.5);

    public void Heading(Heading heading)
    {
        if (heading.Level == 1)
        {
            Set(heading.Text.Value, title, XBrushes.Black, 0);
            flow.Y += 6;
            return;
        }

        flow.Y += 14;
        flow.Graphics.DrawLine(new XPen(XColors.Black, 1.2), flow.Left, flow.Y, flow.Left + flow.Width, flow.Y);
        flow.Y += 5;
        Set(heading.Text.Value, section, XBrushes.Black, 0);
        flow.Y += 3;
    }

    public void Particulars(Particulars particulars)
    {
        const double names = 105;
        foreach (var (name, value) in particulars.Lines)
        {
            flow.Need(body.Size * Leading);
            flow.Graphics.DrawString(name.Value, body, XBrushes.DimGray, flow.Left, flow.Y + body.Size);
            Set(value.Value, body, XBrushes.Black, names);
        }
    }

    public void Lead(SheetText text)
    {
        Set(text.Value, lead, XBrushes.Black, 0);
        flow.Y += 4;
    }

    public void Paragraph(SheetText text)
    {
        Set(text.Value, body, XBrushes.Black, 0);
        flow.Y += 4;
    }

    public void Note(SheetText text)
    {
        flow.Y += 14;
        Set(text.Value, small, XBrushes.DimGray, 0);
    }

    public void Caption(SheetText text, double indent = 0, double? width = null)
    {
        Set(text.Value, small, XBrushes.DimGray, indent, width);
        flow.Y += 6;
    }

    public void Bullets(Bullets bullets)
    {
        foreach (var item in bullets.Items)
        {
            flow.Need(body.Size * Leading);
            flow.Graphics.DrawString("•", body, XBrushes.Black, flow.Left + 2, flow.Y + body.Size);
            Set(item.Value, body, XBrushes.Black, 14);
        }

        flow.Y += 2;
    }

    private void Set(string text, XFont font, XBrush brush, double indent, double? width = null)
    {
        foreach (var line in flow.Lines.Break(text, font, width ?? flow.Width - indent))
        {
            flow.Need(font.Size * Leading);
            flow.Graphics.DrawString(line, font, brush, flow.Left + indent, flow.Y + font.Size);
            flow.Y += font.Size * Leading;
        }
    }
}
