using System.Collections.Frozen;
using System.Collections.Immutable;
using Assistant.Records.Assets;
using Assistant.Records.Plots;
using Assistant.Records.Readings;
using Assistant.Records.Reports.Model;
using Assistant.Trade.Facts;

namespace Assistant.Records.Reports.Sheet;

/// <summary>One page for the one who pays: what was found, what was done, what is left, and what that rests on.</summary>
internal sealed class CustomerPage(VisitReport report, ReportWords words)
{
    // What proves the work to the one who pays; all else that was judged is the office's.
    private static readonly FrozenSet<(string Judgement, string Outcome)> Proofs = new[] { ("nitrogen-hold", "holds"), ("vacuum-decay", "tight") }.ToFrozenSet();

    public IEnumerable<SheetBlock> Blocks()
    {
        yield return new Heading(1, words["title"]);
        yield return new Particulars([.. Particulars()]);
        yield return new Heading(2, words["found"]);
        if (report.Verdicts is [.., var verdict])
        {
            yield return new Lead(verdict.Text);
            if (!verdict.Because.IsEmpty)
            {
                yield return new Bullets([.. verdict.Because.Select(because => (SheetText)because)]);
            }
        }
        else
        {
            yield return new Lead(words["no-verdict"]);
        }

        if (Room() is { } room)
        {
            yield return new Paragraph(room);
        }

        if (!report.Leaks.IsEmpty)
        {
            yield return new Paragraph(words["leaks-found"]);
            yield return new Bullets([.. report.Leaks.Select(l => (SheetText)l.Place)]);
        }

        yield return new Heading(2, words["done"]);
        yield return new Bullets([.. Done()]);
        yield return new Heading(2, words["left"]);
        yield return report.FollowUps.IsEmpty
            ? new Paragraph(words[report.ClosedAt is null ? "under-way" : "nothing-left"])
            : new Table(
                [new(words["column.due"], 1), new(words["column.what"], 4)],
                [.. report.FollowUps.Select(f => new Row([SheetTimes.Day(f.Due), f.What]))]);
        yield return new Note(words.Say("rests-on", ("people", string.Join(", ", report.People)), ("version", report.Basis.RefrigerantData)) + " " + words["gives-way"]);
        if (PullDownPlot.Of(report.Plotted with { Units = report.Units }, words.Phrases) is { } pullDown)
        {
            yield return new Figure(pullDown, IsSmall: true);
        }
    }

    private IEnumerable<(SheetText, SheetText)> Particulars()
    {
        yield return (words["site"], report.Site);
        // Equipment that nobody named is not called "unit" to the one who pays.
        if (report.Unit is { } unit and not Asset.Unnamed)
        {
            yield return (words["unit"], unit);
        }

        if (Counting(FactCatalogue.Refrigerant) is { } refrigerant)
        {
            yield return (words["refrigerant-name"], words.Value(refrigerant));
        }

        yield return (words["opened"], SheetTimes.Full(report.OpenedAt));
        yield return (words["closed"], report.ClosedAt is { } closed ? SheetTimes.Full(closed) : words["still-open"]);
        yield return (words["people"], string.Join(", ", report.People));
        if (report.HandedTo is { } to)
        {
            yield return (words["handed-to"], to);
        }
    }

    private List<SheetText> Done()
    {
        var cylinders = report.Cylinders.Select(c =>
            (SheetText)$"{ReportWords.Mass(Math.Abs(c.GrossAfterGrams - c.GrossBeforeGrams), report.Units)} {c.Refrigerant} {words[$"way.{c.Purpose}"]}, {words.Say("by-cylinder", ("tag", c.Tag))}").ToList();

        // What went by a cylinder's scale stands there already; beside it the amounts said are its running sum.
        List<SheetText> said = cylinders.Count > 0 ? [] : [.. Said(FactCatalogue.ChargeAdded, "charge-added"), .. Said(FactCatalogue.ChargeRecovered, "charge-recovered")];
        List<SheetText> done = [.. cylinders, .. said];
        done.AddRange(report.Judgements.GroupBy(j => j.Judgement).Select(g => g.Last()).Where(j => Proofs.Contains((j.Judgement, j.Outcome)))
            .Select(j => (SheetText)words.Say($"proof.{j.Judgement}", ("text", j.Text))));
        done.InsertRange(0, report.Mended.Select(m => m.Fault).Distinct().Select(fault => (SheetText)words.Say("mended", ("fault", words.Fault(fault)))));
        if (report.IsLeakRepaired)
        {
            done.Insert(0, words["leak-repaired"]);
        }

        if (report.OpenCylinder is { } told)
        {
            done.Add(words.Say("cylinder-open", ("tag", told.Tag ?? words["cylinder-unnamed"])));
        }

        if (done.Count == 0)
        {
            done.Add(words["nothing-done"]);
        }

        if (report.IsSoundSince)
        {
            done.Add(words["sound-since"]);
        }

        if (report.Outcome is { Length: > 0 } outcome)
        {
            done.Add(words.Say("outcome", ("outcome", outcome)));
        }

        return done;
    }

    // Every amount that was said was moved, also where another one followed it.
    private IEnumerable<SheetText> Said(Fact fact, string sentence) => Standing(fact).Select(r => (SheetText)words.Say(sentence, ("amount", words.Value(r))));

    private string? Room() => Standing(FactCatalogue.BoxTemperature) switch
    {
        [] => null,
        [var only] => words.Say("room-once", ("now", words.Value(only))),
        [var first, .., var last] => words.Say("room-twice", ("first", words.Value(first)), ("last", words.Value(last))),
    };

    private LoggedReading? Counting(Fact fact) => report.Readings.FirstOrDefault(r => r.Fact == fact.Name && r.Standing == ReadingStanding.Counts);

    private ImmutableArray<LoggedReading> Standing(Fact fact) =>
        [.. report.Readings.Where(r => r.Fact == fact.Name && r.IsStanding)];
}
