using Assistant.Records.Reports.Model;
using Assistant.Trade.Ledgers;

namespace Assistant.Records.Reports.Sheet;

/// <summary>Every gram: the uses of this visit, the account of each cylinder over all visits, and the equipment's leak rate.</summary>
internal sealed class RefrigerantPages(VisitReport report, ReportWords words)
{
    private readonly SheetTimes times = new(report.OpenedAt);

    public IEnumerable<SheetBlock> Blocks() => [new Heading(2, words["refrigerant"]), Uses(), .. Accounts(), .. Leak()];

    private SheetBlock Uses() => report.Cylinders.IsEmpty
        ? new Paragraph(words["no-cylinders"])
        : new Table(
            [Column("time", 2), Column("cylinder", 3), Column("way", 4), Column("before", 3), Column("after", 3), Column("amount", 3), Column("by", 3)],
            [
                .. report.Cylinders.Select(c => new Row(
                [
                    times.Short(c.At), $"{c.Tag}, {c.Refrigerant}", words[$"way.{c.Purpose}"], Mass(c.GrossBeforeGrams), Mass(c.GrossAfterGrams),
                    Mass(Math.Abs(c.GrossAfterGrams - c.GrossBeforeGrams)), c.By,
                ])),
            ]);

    private IEnumerable<SheetBlock> Accounts()
    {
        if (report.Balances is not { Cylinders.IsEmpty: false } balances)
        {
            yield break;
        }

        yield return new Heading(2, words["cylinder-accounts"]);
        yield return new Table(
            [
                Column("cylinder", 3), Column("opening", 3), Column("charged", 3), Column("recovered", 3), Column("hose-loss", 3),
                Column("transferred", 3), Column("unexplained", 3), Column("remaining", 3),
            ],
            [.. balances.Cylinders.Values.Select(Account)]);
        yield return balances.Gaps.IsEmpty && balances.Mixes.IsEmpty
            ? new Paragraph(words["cylinders-close"])
            : new Bullets([.. balances.Gaps.Select(LedgerSentences.Of).Concat(balances.Mixes.Select(LedgerSentences.Of)).Select(r => (SheetText)words.Say(r, report.Units))]);
    }

    private Row Account(CylinderBalance balance) => new(
    [
        $"{balance.Tag}, {string.Join(" + ", balance.Refrigerants)}", Mass(balance.Opening.Value), Mass(balance.Charged.Value), Mass(balance.Recovered.Value),
        Mass(balance.HoseLoss.Value), Mass((balance.TransferredIn - balance.TransferredOut).Value), Mass(balance.Unexplained.Value), Mass(balance.Remaining.Value),
    ]);

    private IEnumerable<SheetBlock> Leak()
    {
        if (report.Leak is not { } leak)
        {
            yield break;
        }

        yield return new Heading(2, words["leak"]);
        yield return new Paragraph(words.Say(leak.Rate, report.Units));
        yield return new Paragraph(words.Say(leak.Workings, report.Units));
        if (!leak.Findings.IsEmpty)
        {
            yield return new Bullets([.. leak.Findings.Select(f => (SheetText)words.Say(f, report.Units))]);
        }

        yield return new Note(string.Join(" ", leak.Reminders.Select(r => words.Say(r, report.Units))));
    }

    private Column Column(string key, int share) => new(words[$"column.{key}"], share);

    private string Mass(long grams) => ReportWords.Mass(grams, report.Units);
}
