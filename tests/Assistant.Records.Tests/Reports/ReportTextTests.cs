using System.Text;
using Assistant.Records.Reports.Html;
using Assistant.Records.Reports.Model;
using Assistant.Records.Reports.Pdf;
using Assistant.Records.Reports.Sheet;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Reports;

/// <summary>Whatever people type into a visit stays text in its report.</summary>
public class ReportTextTests
{
    public static TheoryData<string> Hostile { get; } = new(
        "<script>alert(1)</script>",
        "\"><img src=x onerror=alert(1)>",
        "</td></tr></table><style>*{display:none}</style>",
        "{{ title | raw }}{% include 'x' %}",
        "]]><!--",
        "&lt;script&gt; &amp; '\"`");

    [Theory]
    [MemberData(nameof(Hostile))]
    public void Markup_is_escaped_wherever_a_person_can_put_it(string text)
    {
        var clean = HtmlReport.Write(Sheet(Filled("plain")));
        var html = HtmlReport.Write(Sheet(Filled(text)));

        Assert.Equal(Tags(clean), Tags(html));
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img src=x", html, StringComparison.Ordinal);
        Assert.Contains(System.Text.Encodings.Web.HtmlEncoder.Default.Encode(text), html, StringComparison.Ordinal);
    }

    [Fact]
    public void Marks_that_turn_the_direction_of_text_are_shown_by_number_and_turn_nothing()
    {
        var html = HtmlReport.Write(Sheet(Filled("safe \u202Egnitar\u2066 \u200F end")));

        Assert.All("\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069\u200E\u200F\u061C", mark => Assert.DoesNotContain(mark, html));
        Assert.Contains("safe [U&#x2B;202E]gnitar[U&#x2B;2066] [U&#x2B;200F] end", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Control_characters_and_broken_unicode_become_visible_or_blank()
    {
        Assert.Equal("a[U+0000]b[U+001B]c d e\uFFFDf", new SheetText("a\0b\u001Bc\nd\te\uD800f").Value);
    }

    [Fact]
    public void Ten_thousand_characters_without_a_space_are_wrapped_and_all_there()
    {
        var text = string.Concat(Enumerable.Range(0, 2000).Select(i => $"{i:0000}x"));
        var sheet = Sheet(Filled(text));

        Assert.Contains(text, HtmlReport.Write(sheet), StringComparison.Ordinal);
        var printed = new StringBuilder().Append(Tool.TextOf(PdfReport.Write(sheet))).Replace("\n", "").Replace(" ", "").Replace("\f", "").ToString();
        for (var i = 0; i < 2000; i += 97)
        {
            Assert.Contains($"{i:0000}x", printed, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Nothing_printed_leaves_the_paper()
    {
        var pdf = PdfReport.Write(Sheet(Filled(new string('W', 2_000))));
        var path = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(path, pdf);
            var boxes = Tool.Run("pdftotext", "-bbox", path, "-");
            var right = boxes.Split("xMax=\"").Skip(1).Select(part => double.Parse(part[..part.IndexOf('"', StringComparison.Ordinal)], System.Globalization.CultureInfo.InvariantCulture));
            Assert.All(right, x => Assert.InRange(x, 0, 612 - 44));
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static ReportSheet Sheet(VisitReport report) => new SheetWriter(InventedVisit.Phrases).Write(report);

    /// <summary>The invented visit with the text in every place that a person fills.</summary>
    private static VisitReport Filled(string text)
    {
        var report = InventedVisit.Report();
        return report with
        {
            VisitId = text,
            Site = text,
            Unit = text,
            AssetId = text,
            Outcome = text,
            HandedTo = text,
            People = [text],
            Readings = [.. report.Readings.Select(r => r with { By = text, Place = text, Word = r.Value is null ? text : null, Unit = r.Unit is null ? null : text, Doubt = r.Doubt is null ? null : text })],
            Verdicts = [.. report.Verdicts.Select(v => v with { Text = text, Because = [text], Standing = text })],
            Cautions = [.. report.Cautions.Select(c => c with { Caution = text, Place = text, By = text })],
            Cylinders = [.. report.Cylinders.Select(c => c with { Tag = text, Refrigerant = text, By = text })],
            FollowUps = [.. report.FollowUps.Select(f => f with { What = text })],
            Pictures = [.. report.Pictures.Select(p => p with { Caption = text, By = text })],
            Leaks = [new(text) { At = report.OpenedAt, By = text }],
            Judgements = [new("vacuum", "decay", "vacuum-decay", "tight", text, [text]) { At = report.OpenedAt, By = text }],
            Messages = [.. report.Messages.Select(m => m with { Text = text, By = text })],
        };
    }

    /// <summary>The page's own tags: what a text adds to them would show here.</summary>
    private static List<string> Tags(string html) =>
        [.. System.Text.RegularExpressions.Regex.Matches(html, "<[/a-zA-Z!][a-z0-9]*").Select(m => m.Value)];
}
