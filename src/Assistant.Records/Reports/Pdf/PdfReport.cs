using System.Collections.Immutable;
using Assistant.Records.Reports.Sheet;
using PdfSharp.Pdf;

namespace Assistant.Records.Reports.Pdf;

/// <summary>A report as PDF with text that can be selected, in fonts that travel with it.</summary>
public static class PdfReport
{
    private const double HeadingRoom = 42;

    public static byte[] Write(ReportSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        using var document = new PdfDocument();
        document.Info.Title = sheet.Title.Value;
        document.Info.Creator = "Coldwalk";
        document.Info.CreationDate = sheet.Dated.UtcDateTime;
        document.Language = "en";
        using (var flow = new PageFlow(document, sheet.Paper, sheet.Title.Value))
        {
            var text = new TextSetter(flow);
            Write(sheet.Customer, flow, text);
            flow.NewPage();
            Write(sheet.Office, flow, text);
        }

        using var memory = new MemoryStream();
        document.Save(memory, closeStream: false);
        return memory.ToArray();
    }

    private static void Write(ImmutableArray<SheetBlock> blocks, PageFlow flow, TextSetter text)
    {
        for (var i = 0; i < blocks.Length; i++)
        {
            if (blocks[i] is Heading { Level: > 1 })
            {
                flow.Need(HeadingRoom + (i + 1 < blocks.Length ? Start(blocks[i + 1], flow) : 0));
            }

            Write(blocks[i], flow, text);
        }
    }

    /// <summary>The room that the beginning of a block takes, in points: a heading is not left alone at the foot of a page.</summary>
    private static double Start(SheetBlock block, PageFlow flow) => block switch
    {
        Figure figure => PdfPen.HeightOf(figure) + 30,
        Gallery gallery => GallerySetter.FirstRow(gallery, flow.Width) + 50,
        _ => 50,
    };

    private static void Write(SheetBlock block, PageFlow flow, TextSetter text)
    {
        switch (block)
        {
            case Heading heading:
                text.Heading(heading);
                break;
            case Particulars particulars:
                text.Particulars(particulars);
                break;
            case Lead lead:
                text.Lead(lead.Text);
                break;
            case Paragraph paragraph:
                text.Paragraph(paragraph.Text);
                break;
            case Note note:
                text.Note(note.Text);
                break;
            case Bullets bullets:
                text.Bullets(bullets);
                break;
            case Table table:
                new TableSetter(flow, table).Set();
                break;
            case Figure { IsSmall: true } small when flow.Room < PdfPen.HeightOf(small) + 60:
                break;
            case Figure figure:
                PdfPen.Draw(figure, flow);
                text.Caption(figure.Plot.Alt);
                break;
            case Gallery gallery:
                new GallerySetter(flow, text).Set(gallery);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name, "A block without a way to print it.");
        }
    }
}
