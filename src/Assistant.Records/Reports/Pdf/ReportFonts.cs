using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace Assistant.Records.Reports.Pdf;

/// <summary>The two faces a printed report is set in, from inside the program.</summary>
internal sealed class ReportFonts : IFontResolver
{
    private const string Family = "DejaVu Sans";

    private static readonly Lazy<bool> Ready = new(() =>
    {
        GlobalFontSettings.FontResolver = new ReportFonts();
        return true;
    });

    private ReportFonts()
    {
    }

    public static XFont Of(double size, bool bold = false)
    {
        _ = Ready.Value;
        return new(Family, size, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular, new XPdfFontOptions(PdfFontEncoding.Unicode, PdfFontEmbedding.TryComputeSubset));
    }

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(isBold ? "DejaVuSans-Bold" : "DejaVuSans");

    public byte[]? GetFont(string faceName) => Resources.Bytes($"fonts/{faceName}.ttf");
}
