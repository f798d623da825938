using System.Collections.Immutable;
using Assistant.Records.Plots;
using Assistant.Records.Reports.Model;

namespace Assistant.Records.Reports.Sheet;

/// <summary>A report as it is laid out, whatever it is printed with: a page for the customer, then the log for the office.</summary>
/// <param name="Paper">A4 or Letter.</param>
public sealed record ReportSheet(SheetText Title, DateTimeOffset Dated, Paper Paper, ImmutableArray<SheetBlock> Customer, ImmutableArray<SheetBlock> Office);

/// <summary>The paper a report is printed on.</summary>
public enum Paper
{
    A4,
    Letter,
}

/// <summary>One thing on a page.</summary>
public abstract record SheetBlock;

/// <summary>A heading; level 1 begins a part, level 2 a section.</summary>
public sealed record Heading(int Level, SheetText Text) : SheetBlock;

/// <summary>Names with their values.</summary>
public sealed record Particulars(ImmutableArray<(SheetText Name, SheetText Value)> Lines) : SheetBlock;

/// <summary>The one sentence to be read first.</summary>
public sealed record Lead(SheetText Text) : SheetBlock;

public sealed record Paragraph(SheetText Text) : SheetBlock;

public sealed record Bullets(ImmutableArray<SheetText> Items) : SheetBlock;

/// <summary>Small print.</summary>
public sealed record Note(SheetText Text) : SheetBlock;

public sealed record Table(ImmutableArray<Column> Columns, ImmutableArray<Row> Rows) : SheetBlock;

/// <param name="Share">How much of the width it takes, against the other columns.</param>
public sealed record Column(SheetText Header, int Share);

/// <param name="IsStruck">True for what no longer counts: it is shown struck through.</param>
public sealed record Row(ImmutableArray<SheetText> Cells, bool IsStruck = false);

/// <summary>A plot; what it shows stands under it in words.</summary>
/// <param name="IsSmall">True where it shares the page with what matters more: on paper it is left out rather than begin another page.</param>
public sealed record Figure(Plot Plot, bool IsSmall = false) : SheetBlock;

public sealed record Gallery(ImmutableArray<(ReportedPicture Picture, SheetText Caption)> Pictures) : SheetBlock;
