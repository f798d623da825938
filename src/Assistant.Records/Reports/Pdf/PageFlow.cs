using System.Globalization;
using Assistant.Records.Reports.Sheet;
using PdfSharp;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Assistant.Records.Reports.Pdf;

/// <summary>Pages one after the other and the place to write next, from the top down. Lengths in points.</summary>
internal sealed class PageFlow : IDisposable
{
    private const double Margin = 45;
    private const double FooterHeight = 24;

    private readonly PdfDocument document;
    private readonly Paper paper;
    private readonly string footer;
    private readonly XFont footerFont = ReportFonts.Of(8);
    private PdfPage page = null!;

    public PageFlow(PdfDocument document, Paper paper, string footer)
    {
        (this.document, this.paper, this.footer) = (document, paper, footer);
        NewPage();
        Lines = new(Graphics);
    }

    public XGraphics Graphics { get; private set; } = null!;

    public LineBreaker Lines { get; private set; }

    public double Left { get; } = Margin;

    public double Width => page.Width.Point - (2 * Margin);

    public double Y { get; set; }

    public double Room => page.Height.Point - Margin - FooterHeight - Y;

    public bool IsFresh => Y <= Margin;

    public void NewPage()
    {
        Graphics?.Dispose();
        page = document.AddPage();
        page.Size = paper == Paper.A4 ? PageSize.A4 : PageSize.Letter;
        Graphics = XGraphics.FromPdfPage(page);
        Lines = new(Graphics);
        Y = Margin;
        var number = document.PageCount.ToString(CultureInfo.InvariantCulture);
        var bottom = page.Height.Point - Margin + 4;
        Graphics.DrawString(Lines.Break(footer, footerFont, Width - 30)[0], footerFont, XBrushes.DimGray, Left, bottom);
        Graphics.DrawString(number, footerFont, XBrushes.DimGray, Left + Width - Graphics.MeasureString(number, footerFont).Width, bottom);
    }

    /// <summary>Goes to a new page unless that much room is left on this one.</summary>
    public void Need(double height)
    {
        if (Room < height && !IsFresh)
        {
            NewPage();
        }
    }

    public void Dispose() => Graphics.Dispose();
}
