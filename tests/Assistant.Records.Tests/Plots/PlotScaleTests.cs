using System.Globalization;
using Assistant.Records.Plots;
using Assistant.Records.Plots.Drawing;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Plots;

/// <summary>A point is read off its plot as a person does it: between the numbers along the axes.</summary>
public class PlotScaleTests
{
    [Fact]
    public void A_vacuum_is_read_off_where_it_was_put()
    {
        var plot = VisitPlots.Of(
            PlottedEvents.Of("us", [(0, "vacuum", (320.0, "micron")), (5, "vacuum", (410.0, "micron")), (10, "vacuum", (460.0, "micron")), (20, "vacuum", (480.0, "micron"))]),
            InventedVisit.Phrases).Single();

        Assert.Equal("vacuum", plot.Name);
        AssertRead(plot, [(0, 320), (5, 410), (10, 460), (20, 480)], isLogarithmic: false);
    }

    [Fact]
    public void A_box_is_read_off_in_the_sites_units()
    {
        var plot = VisitPlots.Of(
            PlottedEvents.Of("metric", [(0, "setpoint", (4.0, "degC")), (0, "box_temperature", (12.0, "degC")), (20, "box_temperature", (50.0, "degF")), (40, "box_temperature", (8.5, "degC"))]),
            InventedVisit.Phrases).Single();

        AssertRead(plot, [(0, 12), (20, 10), (40, 8.5)], isLogarithmic: false);
    }

    [Fact]
    public void A_cycle_is_read_off_by_its_absolute_pressures()
    {
        var plot = CyclePlot.Of(PlottedVisit.Of(InventedVisit.Events), InventedVisit.Phrases)!;

        // 24 and 171 psig at sea level (14.70 psi, ISO 2533).
        Assert.Equal([38.7, 185.7, 185.7, 38.7], Read(plot, isLogarithmic: true).Select(p => Math.Round(p.Y, 1)));
    }

    [Theory]
    [InlineData(0.2, 0.9)]
    [InlineData(-40, 120)]
    [InlineData(0, 1000)]
    [InlineData(3.1, 3.4)]
    [InlineData(0, 7)]
    public void An_axis_carries_three_to_eight_round_numbers(double low, double high)
    {
        var ticks = new Axis("", low, high).Ticks;

        Assert.InRange(ticks.Length, 3, 8);
        Assert.All(ticks, t => Assert.InRange(t, low - 1e-9, high + 1e-9));
        Assert.All(ticks, t => Assert.Equal(t, double.Parse(Axis.Number(t), CultureInfo.InvariantCulture), 1e-9));
    }

    private static void AssertRead(Plot plot, (double X, double Y)[] expected, bool isLogarithmic)
    {
        var read = Read(plot, isLogarithmic);
        Assert.Equal(expected.Length, read.Count);
        foreach (var (wanted, found) in expected.Zip(read))
        {
            Assert.Equal(wanted.X, found.X, 0.01);
            Assert.Equal(wanted.Y, found.Y, 0.01);
        }
    }

    /// <summary>The dots' values by the numbers along the left and the lower edge.</summary>
    private static List<(double X, double Y)> Read(Plot plot, bool isLogarithmic)
    {
        var numbers = plot.Drawing.Labels.Where(l => double.TryParse(l.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out _)).ToList();
        var left = numbers.Where(l => l.Anchor == 1 && l.At.X < 44).ToList();
        var lower = numbers.Where(l => l.Anchor == 0).ToList();
        // A number's foot stands 3.5 points under the middle of its line.
        var up = Scale(left.Select(l => (l.At.Y - 3.5, Value(l))).ToList(), isLogarithmic);
        var across = Scale(lower.Select(l => (l.At.X, Value(l))).ToList(), isLogarithmic: false);
        return [.. plot.Drawing.Dots.Select(d => (across(d.At.X), up(d.At.Y)))];
    }

    private static double Value(Label label) => double.Parse(label.Text, CultureInfo.InvariantCulture);

    private static Func<double, double> Scale(List<(double At, double Value)> marks, bool isLogarithmic)
    {
        var (first, last) = (marks[0], marks[^1]);
        double Straight(double value) => isLogarithmic ? Math.Log(value) : value;
        return at =>
        {
            var straight = Straight(first.Value) + ((at - first.At) / (last.At - first.At) * (Straight(last.Value) - Straight(first.Value)));
            return isLogarithmic ? Math.Exp(straight) : straight;
        };
    }
}
