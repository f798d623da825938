using System.Xml.Linq;
using Assistant.Records.Plots;
using Assistant.Records.Plots.Drawing;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Plots;

public class VisitPlotsTests
{
    [Fact]
    public void Where_the_readings_do_not_give_a_plot_there_is_none()
    {
        Assert.Empty(VisitPlots.Of(PlottedEvents.Of("us"), InventedVisit.Phrases));
        Assert.Empty(VisitPlots.Of(PlottedEvents.Of("us", [(0, "vacuum", (320.0, "micron")), (0, "box_temperature", (51.0, "degF")), (9, "setpoint", (36.0, "degF"))]), InventedVisit.Phrases));
    }

    [Theory]
    [InlineData("condenser_volume")]
    [InlineData("coldest_design_ambient")]
    [InlineData("head_pressure_control_setting")]
    [InlineData("design_condenser_split")]
    public void Charge_against_head_is_drawn_only_where_all_it_rests_on_is_known(string missing)
    {
        Assert.NotEmpty(VisitPlots.Of(PlottedEvents.Of("us", PlottedEvents.Flooded), InventedVisit.Phrases));
        Assert.Empty(VisitPlots.Of(PlottedEvents.Of("us", PlottedEvents.Flooded.Where(f => f.Fact != missing)), InventedVisit.Phrases));
    }

    [Fact]
    public void Charge_against_head_tells_the_hand_reckoned_amounts()
    {
        var plot = VisitPlots.Of(PlottedEvents.Of("us", PlottedEvents.Flooded), InventedVisit.Phrases).Single();

        // By hand: 1 - 30/90 = 0.667 at 0 °F, 1 - 30/110 = 0.727 at -20 °F. R-134a at the midpoint of 90 and -20 °F (35 °F): liquid
        // 1289 kg/m3; vapour at 90 °F 40 kg/m3 (from memory). 1249 kg/m3 * 0.00566 m3 = 7.07 kg: 4.72 and 5.14 kg, 0.43 kg apart.
        Assert.Contains("must hold 10.4 lb of liquid in today's 0 °F, and 11.3 lb at -20 °F", plot.Alt, StringComparison.Ordinal);
        Assert.Contains("The difference, 15.1 oz, is the winter amount", plot.Alt, StringComparison.Ordinal);
        Assert.Contains("at the head of 85 psig as read", plot.Alt, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pull_down_is_told_with_its_end()
    {
        // 50 °F falling towards 30 °F with a time constant of 60 min: 30 + 20 exp(-t/60) at 0, 30, 60 min.
        var reaching = PullDown(36, (0, 50), (30, 42.13), (60, 37.36));
        Assert.Contains("0 min 50 °F; 30 min 42 °F; 60 min 37 °F", reaching, StringComparison.Ordinal);
        // 30 + 20 exp(-t/60) = 36 at t = 60 ln(20/6) = 72 min, 12 min after the last reading.
        Assert.Contains("it reaches 36 °F 12 min after the last reading", reaching, StringComparison.Ordinal);
        Assert.Contains("it levels off at 30 °F and does not reach 28 °F", PullDown(28, (0, 50), (30, 42.13), (60, 37.36)), StringComparison.Ordinal);
        Assert.Contains("The room is at its setpoint of 38 °F", PullDown(38, (0, 50), (30, 42.13), (60, 37.36)), StringComparison.Ordinal);
        Assert.Contains("Three readings at different times are needed", PullDown(36, (0, 50), (30, 42.1)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_room_read_twice_within_a_minute_is_no_course()
    {
        Assert.Empty(VisitPlots.Of(PlottedEvents.Of("us", [(0, "setpoint", (36.0, "degF")), (0, "box_temperature", (48.0, "degF")), (0, "box_temperature", (47.0, "degF"))]), InventedVisit.Phrases));
        Assert.Single(VisitPlots.Of(PlottedEvents.Of("us", [(0, "setpoint", (36.0, "degF")), (0, "box_temperature", (48.0, "degF")), (1, "box_temperature", (47.0, "degF"))]), InventedVisit.Phrases));
    }

    [Theory]
    [InlineData("dry and tight", 320, 360, 380, 390)]
    [InlineData("it leaks", 400, 900, 1400, 1900)]
    [InlineData("there is moisture", 450, 1900, 2400, 2500)]
    [InlineData("shut off too early", 700, 705, 710, 712)]
    public void A_vacuum_is_told_with_its_verdict(string verdict, double first, double second, double third, double last)
    {
        var plot = VisitPlots.Of(
            PlottedEvents.Of("us", [(0, "vacuum", (first, "micron")), (7, "vacuum", (second, "micron")), (14, "vacuum", (third, "micron")), (20, "vacuum", (last, "micron"))]),
            InventedVisit.Phrases).Single();

        Assert.Contains(verdict, plot.Alt, StringComparison.Ordinal);
        Assert.Contains($"20 min {last} micron", plot.Alt, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("us")]
    [InlineData("metric")]
    public void Every_plot_is_whole_says_itself_in_words_and_stays_on_its_paper(string units)
    {
        var plots = VisitPlots.Of(
            [.. PlottedEvents.Of(units, [.. PlottedEvents.Flooded, .. Everything])], InventedVisit.Phrases);

        Assert.Equal(["cycle", "pull-down", "vacuum", "flooding"], plots.Select(p => p.Name));
        Assert.All(plots, plot =>
        {
            var svg = XElement.Parse(plot.Svg);
            XNamespace ns = "http://www.w3.org/2000/svg";
            Assert.Equal("img", svg.Attribute("role")!.Value);
            Assert.Equal(plot.Title, svg.Element(ns + "title")!.Value);
            Assert.Equal(plot.Alt, svg.Element(ns + "desc")!.Value);
            Assert.DoesNotContain("style", plot.Svg, StringComparison.Ordinal);
            Assert.All(plot.Drawing.Strokes.SelectMany(s => s.Points).Concat(plot.Drawing.Dots.Select(d => d.At)).Concat(plot.Drawing.Labels.Select(l => l.At)), at =>
            {
                Assert.InRange(at.X, 0, PlotDrawing.Width);
                Assert.InRange(at.Y, 0, PlotDrawing.Height);
            });
            // A letter is some 6 points wide at most on average: no words leave the paper or lie on others of the same line.
            Assert.All(plot.Drawing.Labels, label => Assert.InRange(Left(label), -2, PlotDrawing.Width - (label.Text.Length * 6) + 2));
        });
    }

    private static double Left(Label label) => label.At.X - (label.Text.Length * 6 * (label.Anchor + 1) / 2.0);

    private static IEnumerable<(int Minute, string Fact, object Value)> Everything =>
    [
        (3, "suction_pressure", (18.0, "psig")), (3, "setpoint", (36.0, "degF")), (3, "box_temperature", (50.0, "degF")), (30, "box_temperature", (43.0, "degF")), (60, "box_temperature", (38.0, "degF")),
        (61, "vacuum", (320.0, "micron")), (81, "vacuum", (380.0, "micron")),
    ];

    private static string PullDown(double setpoint, params IEnumerable<(int Minute, double Degrees)> readings) => VisitPlots.Of(
        PlottedEvents.Of("us", [(0, "setpoint", (setpoint, "degF")), .. readings.Select(r => (r.Minute, "box_temperature", (object)(r.Degrees, "degF")))]),
        InventedVisit.Phrases).Single().Alt;
}
