using System.Globalization;
using Assistant.Records.Plots;
using Assistant.Records.Readings;
using Assistant.Records.Reports.Model;

namespace Assistant.Records.Reports.Sheet;

/// <summary>The full log for the office: every reading with what became of it, every caution, every gram, every word.</summary>
internal sealed class OfficePages(VisitReport report, ReportWords words)
{
    private readonly SheetTimes times = new(report.OpenedAt);

    public IEnumerable<SheetBlock> Blocks()
    {
        yield return new Heading(1, words["for-office"]);
        yield return new Particulars(
        [
            (words["visit"], report.VisitId),
            .. report.AssetId is { } asset ? new[] { ((SheetText)words["asset"], (SheetText)asset) } : [],
            (words["opened"], SheetTimes.Full(report.OpenedAt)),
        ]);

        foreach (var block in Verdicts().Concat(Judgements()).Concat(Leaks()).Concat(Readings()).Concat(new RefrigerantPages(report, words).Blocks()).Concat(Plots()).Concat(Cautions()).Concat(Pictures()).Concat(Messages()))
        {
            yield return block;
        }

        yield return new Note(words.Say(
            "integrity", ("count", report.Basis.LogVersion.ToString(CultureInfo.InvariantCulture)), ("hash", report.Basis.LogHead)));
    }

    private IEnumerable<SheetBlock> Verdicts() => Section("verdicts", report.Verdicts.Length, () => new Table(
        [Column("time", 2), Column("verdict", 6), Column("standing", 2), Column("because", 6)],
        [.. report.Verdicts.Select(v => new Row([times.Short(v.At), v.Text, words.Word(v.Standing), string.Join("; ", v.Because.Select(b => b.TrimEnd('.')))]))]));

    private IEnumerable<SheetBlock> Judgements() => Section("judgements", report.Judgements.Length, () => new Table(
        [Column("time", 2), Column("judgement", 8), Column("because", 7)],
        [.. report.Judgements.Select(j => new Row([times.Short(j.At), j.Text, string.Join("; ", j.Because.Select(b => b.TrimEnd('.')))]))]));

    private IEnumerable<SheetBlock> Leaks() => Section("leaks", report.Leaks.Length, () => new Table(
        [Column("time", 2), Column("leak-place", 10), Column("by", 3)],
        [.. report.Leaks.Select(l => new Row([times.Short(l.At), l.Place, l.By]))]));

    private IEnumerable<SheetBlock> Readings() => Section("readings", report.Readings.Length, () => new Table(
        [Column("time", 2), Column("what", 5), Column("value", 3), Column("place", 2), Column("by", 3), Column("remark", 4)],
        [
            .. report.Readings.Select(r => new Row(
                [times.Short(r.At), words.Fact(r.Fact), words.Value(r), words.Word(r.Place), r.By, Remark(r)],
                IsStruck: r.Standing is ReadingStanding.Withdrawn or ReadingStanding.Questioned or ReadingStanding.Disputed)),
        ]));

    private string Remark(LoggedReading reading) => reading.Standing switch
    {
        ReadingStanding.Withdrawn => Correction(reading) is { } correction ? words.Say("remark.corrected", ("value", words.Value(correction))) : words["remark.withdrawn"],
        ReadingStanding.Superseded => words["remark.superseded"],
        ReadingStanding.Outdated => words["remark.outdated"],
        ReadingStanding.Disputed => words["remark.disputed"],
        ReadingStanding.Questioned => words.Say("remark.questioned", ("why", reading.Doubt ?? "")),
        _ => "",
    };

    private LoggedReading? Correction(LoggedReading withdrawn) => report.Readings.FirstOrDefault(r =>
        r.Fact == withdrawn.Fact && r.Number > withdrawn.WithdrawnBy && r.IsStanding);

    private IEnumerable<SheetBlock> Plots() =>
        VisitPlots.Of(report.Plotted with { Units = report.Units }, words.Phrases).SelectMany<Plot, SheetBlock>(plot => [new Heading(2, plot.Title), new Figure(plot)]);

    private IEnumerable<SheetBlock> Cautions() => Section("cautions", report.Cautions.Length, () => new Table(
        [Column("time", 2), Column("caution", 10), Column("place", 2), Column("by", 3)],
        [.. report.Cautions.Select(c => new Row([times.Short(c.At), words.Caution(c.Caution), words.Word(c.Place), c.By]))]));

    private IEnumerable<SheetBlock> Pictures() => Section("pictures", report.Pictures.Length, () => new Gallery(
        [.. report.Pictures.Select(p => (p, (SheetText)$"{times.Short(p.At)} {p.By}: {(p.Jpeg is null ? words["picture-gone"] + " " : "")}{p.Caption}"))]));

    private IEnumerable<SheetBlock> Messages() => Section("messages", report.Messages.Length, () => new Table(
        [Column("time", 2), Column("by", 3), Column("words", 12)],
        [.. report.Messages.Select(m => new Row([times.Short(m.At), m.By, m.Text]))]));

    private IEnumerable<SheetBlock> Section(string heading, int count, Func<SheetBlock> block) =>
        count == 0 ? [] : [new Heading(2, words[heading]), block()];

    private Column Column(string key, int share) => new(words[$"column.{key}"], share);
}
