using System.Text.Json;
using Assistant.Dialogue.Questions;
using Assistant.Dialogue.Visits;
using Assistant.Records.Readings;
using Assistant.Records.Reports;
using Assistant.Records.Reports.Html;
using Assistant.Records.Reports.Model;
using Assistant.Records.Reports.Pdf;
using Assistant.Records.Reports.Sheet;
using Assistant.Records.Tests.Support;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Records.Tests.Reports;

public class VisitReportTests
{
    [Fact]
    public void The_report_holds_what_the_log_holds()
    {
        var report = InventedVisit.Report();

        Assert.Equal(["Robin", "Kim"], report.People.AsEnumerable());
        Assert.Equal("undercharge", Assert.Single(report.Verdicts).Fault);
        Assert.Equal("flare made anew, charged, pulling down", report.Outcome);
        Assert.Equal(Invented.Morning.AddMinutes(100), report.ClosedAt);
        Assert.Equal(["lock-out", "roof-weather"], report.Cautions.Select(c => c.Caution));
        Assert.Equal(new DateOnly(2026, 2, 11), Assert.Single(report.FollowUps).Due);
        Assert.Equal(1720, report.Cylinders.Sum(c => c.GrossBeforeGrams - c.GrossAfterGrams));
        Assert.Equal([ReadingStanding.Withdrawn, ReadingStanding.Counts], report.Readings.Where(r => r.Fact == "liquid_line_temperature").Select(r => r.Standing));
        Assert.Equal([ReadingStanding.Questioned, ReadingStanding.Counts], report.Readings.Where(r => r.Fact == "discharge_pressure").Select(r => r.Standing));
    }

    [Fact]
    public void A_reminder_of_a_later_day_is_left_to_do_once_the_visit_is_closed_and_one_of_the_same_day_is_not()
    {
        var closed = InventedVisit.Events[^1];
        ReminderSet Reminder(int days, string about) => new(closed.At.AddDays(days), about) { Number = closed.Number, At = closed.At, By = "Robin" };
        var report = InventedVisit.Report([.. InventedVisit.Events.SkipLast(1), Reminder(21, "check for leaks"), Reminder(0, "pull-down"), closed with { Number = closed.Number + 2 }]);

        Assert.Equal([(new DateOnly(2026, 2, 2), "check for leaks"), (new DateOnly(2026, 2, 11), "verify the repaired flare with soap film")], report.FollowUps.Select(f => (f.Due, f.What)));
    }

    [Fact]
    public void A_cylinder_whose_weights_were_not_all_said_is_named_and_not_called_nothing()
    {
        var events = InventedVisit.Cleaned(15);
        var noted = new CylinderNoted { Tag = "7", Purpose = "charge", BeforeGrams = 20_000, AfterGrams = 18_500, Asks = "tare", Number = events.Count + 1, At = events[^1].At, By = "Robin" };
        var page = HtmlReport.Write(new SheetWriter(InventedVisit.Phrases).Write(InventedVisit.Report([.. events, noted])));

        Assert.Contains("Refrigerant was weighed by cylinder 7, and not all of its weights were said: it is in no account.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("No refrigerant was added or taken out.", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_repaired_leak_is_told_to_the_customer_and_equipment_nobody_named_is_not_called_unit()
    {
        var report = InventedVisit.Report() with { Unit = "unit" };
        string Customer(VisitReport of) => HtmlReport.Write(new SheetWriter(InventedVisit.Phrases).Write(of)).Split("The full log")[0];

        Assert.Contains("A leak was repaired", Customer(report with { IsLeakRepaired = true }), StringComparison.Ordinal);
        Assert.DoesNotContain("A leak was repaired", Customer(report), StringComparison.Ordinal);
        Assert.DoesNotContain("Equipment", Customer(report), StringComparison.Ordinal);
        Assert.Contains("Equipment", Customer(report with { Unit = "roof unit" }), StringComparison.Ordinal);
    }

    [Fact]
    public void The_first_page_is_the_customers_and_has_no_jargon_of_the_log()
    {
        var pages = Tool.TextOf(PdfReport.Write(Sheet())).Split('\f');

        Assert.Contains("The system is short of refrigerant.", pages[0], StringComparison.Ordinal);
        Assert.Contains("The room was at 51 °F to begin with and at 38 °F when last read.", pages[0], StringComparison.Ordinal);
        Assert.Contains("3.8 lb R448A into the equipment, by the scale of cylinder INV-07", pages[0], StringComparison.Ordinal);
        Assert.Matches(@"2026-02-11\s+verify the repaired flare with soap film", pages[0]);
        Assert.Contains("Nobody checked the instruments", pages[0], StringComparison.Ordinal);
        Assert.Contains("Put right: short of refrigerant", pages[0], StringComparison.Ordinal);
        Assert.DoesNotContain("711", pages[0], StringComparison.Ordinal);
        Assert.Contains("The full log", pages[1], StringComparison.Ordinal);
    }

    // The condensing temperatures are 57 and 43 degC by the dew table of R-449A; 12 K is the split of this invented plate.
    [Theory]
    [InlineData(17, true)]
    [InlineData(24, false)]
    public void What_was_read_afresh_after_a_repair_says_whether_it_is_sound(double head, bool isSound)
    {
        var report = InventedVisit.Report(InventedVisit.Cleaned(head));

        Assert.Equal(isSound, report.IsSoundSince);
        Assert.Equal(isSound, Tool.TextOf(PdfReport.Write(Sheet(report))).Contains("What was read afresh after that is as it should be.", StringComparison.Ordinal));
    }

    [Fact]
    public void The_log_says_what_was_corrected_and_what_was_not_counted()
    {
        var text = Tool.TextOf(PdfReport.Write(Sheet()));

        Assert.Matches(@"65 °F\s+unit\s+Robin\s+corrected to 56 °F", text);
        Assert.Matches(@"711 psig\s+Kim\s+does not fit, not", text);
        Assert.Matches(@"31\.3 lb\s+27\.5 lb\s+3\.8 lb", text);
        Assert.Matches("held 30 events", text);
        Assert.Matches(@"flashing\s+unit\s+Robin\s+from before the repair", text);
    }

    [Fact]
    public void The_page_shows_the_same_and_runs_nothing()
    {
        var html = HtmlReport.Write(Sheet());

        Assert.Contains("Content-Security-Policy\" content=\"default-src 'none'", html, StringComparison.Ordinal);
        Assert.Contains("corrected to 56 °F", html, StringComparison.Ordinal);
        Assert.Contains("class=\"measured\"", html, StringComparison.Ordinal);
        Assert.Contains("class=\"design\"", html, StringComparison.Ordinal);
        Assert.Contains("data:image/jpeg;base64,", html, StringComparison.Ordinal);
        Assert.Contains("oil at the return bend, top left", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Leaks_and_the_tests_that_were_passed_last_stand_on_the_customers_page_and_all_that_was_judged_in_the_log()
    {
        var report = InventedVisit.Report() with
        {
            Leaks = [new("the distributor nut, 4 o'clock") { At = Invented.Morning, By = "Robin" }],
            Judgements =
            [
                Judged("vacuum-decay", "leak", "LEAK: climbing without end."),
                Judged("vacuum-decay", "tight", "TIGHT AND DRY: from 380 micron to 455 micron in 18 min, and levelled."),
                Judged("nitrogen-hold", "holds", "HOLDS: 148 psig."),
                Judged("nitrogen-hold", "leaking", "LEAKS: 120 psig."),
            ],
        };

        var pages = Tool.TextOf(PdfReport.Write(new SheetWriter(InventedVisit.Phrases).Write(report))).Split('\f');

        Assert.Contains("the distributor nut, 4 o'clock", pages[0], StringComparison.Ordinal);
        Assert.Contains("Vacuum test: TIGHT AND DRY", pages[0], StringComparison.Ordinal);
        Assert.DoesNotContain("Pressure test", pages[0], StringComparison.Ordinal);
        Assert.Contains("LEAK: climbing without end.", pages[1], StringComparison.Ordinal);
        Assert.Contains("LEAKS: 120 psig.", pages[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(UnitSystem.Us, null, "612 x 792")]
    [InlineData(UnitSystem.Metric, null, "595 x 842")]
    [InlineData(UnitSystem.Us, Paper.A4, "595 x 842")]
    public void The_paper_is_the_sites_unless_another_is_asked_for(UnitSystem units, Paper? paper, string size)
    {
        var path = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(path, PdfReport.Write(new SheetWriter(InventedVisit.Phrases).Write(InventedVisit.Report(units), paper)));
            Assert.Contains($"Page size:       {size} pts", Tool.Run("pdfinfo", path), StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void The_machine_readable_report_keeps_readings_as_they_were_said_and_the_head_of_the_log()
    {
        using var json = JsonDocument.Parse(JsonReport.Write(InventedVisit.Report()));
        var root = json.RootElement;

        Assert.Equal("coldwalk-visit-report-1", root.GetProperty("schema").GetString());
        Assert.Equal("us", root.GetProperty("units").GetString());
        var reading = root.GetProperty("readings").EnumerateArray().First(r => r.GetProperty("standing").GetString() == "withdrawn");
        Assert.Equal(65, reading.GetProperty("value").GetDouble());
        Assert.Equal("degF", reading.GetProperty("unit").GetString());
        Assert.Equal(30, root.GetProperty("basis").GetProperty("logVersion").GetInt32());
        Assert.Equal("compressor-inlet", root.GetProperty("measuredCycle")[0].GetProperty("corner").GetString());
    }

    [Fact]
    public void A_visit_without_verdict_readings_or_cycle_still_makes_a_report()
    {
        var bare = InventedVisit.Report() with
        {
            Readings = [], Verdicts = [], Mended = [], Cautions = [], Cylinders = [], FollowUps = [], Pictures = [], Messages = [], Plotted = new(FactSet.Empty, VisitCourse.None, UnitSystem.Us, null, null), ClosedAt = null, Outcome = null,
        };
        var sheet = new SheetWriter(InventedVisit.Phrases).Write(bare);

        var text = Tool.TextOf(PdfReport.Write(sheet));

        Assert.Contains("No verdict was reached on this visit.", text, StringComparison.Ordinal);
        Assert.Contains("The visit is still under way.", text, StringComparison.Ordinal);
        Assert.Contains("Nothing was left open.", HtmlReport.Write(new SheetWriter(InventedVisit.Phrases).Write(bare with { ClosedAt = Invented.Morning })), StringComparison.Ordinal);
        Assert.Contains("not closed yet", HtmlReport.Write(sheet), StringComparison.Ordinal);
    }

    private static JudgementGiven Judged(string judgement, string outcome, string text) =>
        new("w", "s", judgement, outcome, text, []) { At = Invented.Morning, By = "Robin" };

    private static ReportSheet Sheet(VisitReport? report = null) => new SheetWriter(InventedVisit.Phrases).Write(report ?? InventedVisit.Report());
}
