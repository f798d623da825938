using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Records.Plots.Drawing;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Records.Plots;

/// <summary>The box temperature against time with its first-order fit, drawn on to the setpoint where it will get there.</summary>
public static class PullDownPlot
{
    public const string Name = "pull-down";
    private const int FitPoints = 80;

    // A forecast longer than twice what was watched is told in words and not drawn.
    private const double LongestForecast = 2;
    private const double LongInMinutes = 240;

    // Within it the room has not changed: two readings so close are one that was put right or read off another gauge.
    private const double ShortestCourse = 1;

    /// <summary>The plot, or null with fewer than two box temperatures a minute apart, or without a setpoint.</summary>
    public static Plot? Of(PlottedVisit visit, PhraseBook phrases)
    {
        ArgumentNullException.ThrowIfNull(visit);
        var box = visit.Course.Box;
        if (box.IsEmpty || box.Max(r => r.At.Minutes) - box.Min(r => r.At.Minutes) < ShortestCourse || visit.Facts.Temperature(FactCatalogue.Setpoint) is not { } setpoint)
        {
            return null;
        }

        var words = new PlotWords(phrases, visit.Units);
        var fit = PullDown.Fit(box, setpoint);
        return new(Name, words.Say("pull-down.title"), string.Join(' ', Alt(box, setpoint, fit, words)), Draw(box, setpoint, fit, words));
    }

    private static PlotDrawing Draw(ImmutableArray<BoxReading> box, CelsiusTemperature setpoint, PullDown? fit, PlotWords words)
    {
        var unit = words.IsUs ? UnitOfMeasure.Fahrenheit : UnitOfMeasure.Celsius;
        var start = box.Min(r => r.At.Minutes);
        var span = box.Max(r => r.At.Minutes) - start;
        var end = fit?.ToSetpoint is { } to && to.Minutes <= LongestForecast * span ? span + to.Minutes : span;
        var perUnit = end > LongInMinutes ? 60.0 : 1.0;
        var points = box.Select(r => (X: (r.At.Minutes - start) / perUnit, Y: Shown(r.Temperature))).ToList();
        var course = fit is null
            ? []
            : Enumerable.Range(0, FitPoints + 1).Select(i => end * i / FitPoints).Select(m => (X: m / perUnit, Y: Shown(fit.At(Duration.FromMinutes(m))))).ToList();

        var frame = new PlotFrame(
            Axis.Around(words.Axis("time", perUnit > 1 ? "h" : "min"), [0, end / perUnit], fromZero: true),
            Axis.Around(words.Axis("box", words.IsUs ? "°F" : "°C"), points.Select(p => p.Y).Append(Shown(setpoint))));
        var (guides, labels) = frame.Levels(atRight: false, (Shown(setpoint), words.Say("pull-down.setpoint", ("setpoint", setpoint))));
        var empty = frame.Empty();
        return new([.. empty.Strokes, .. guides, frame.Line(Ink.Design, course)], [.. points.Select(p => frame.Dot(p.X, p.Y))], [.. empty.Labels, .. labels]);

        double Shown(CelsiusTemperature temperature) => unit.FromCanonical(temperature.Degrees);
    }

    private static IEnumerable<string> Alt(ImmutableArray<BoxReading> box, CelsiusTemperature setpoint, PullDown? fit, PlotWords words)
    {
        var start = box.Min(r => r.At.Minutes);
        yield return words.Say("pull-down.readings", ("readings", PlotWords.List(
            [.. box.Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.At.Minutes - start:0} min {words.Written(r.Temperature)}"))])));
        yield return fit switch
        {
            null => words.Say("pull-down.few", ("setpoint", setpoint)),
            { ToSetpoint: { Seconds: <= 0 } } => words.Say("pull-down.there", ("setpoint", setpoint)),
            { ToSetpoint: { } to } => words.Say("pull-down.reaches", ("setpoint", setpoint), ("time", new Amount(to.Seconds, Dimension.Time)), ("constant", new Amount(fit.TimeConstant.Seconds, Dimension.Time))),
            _ => words.Say("pull-down.never", ("setpoint", setpoint), ("end", fit.LevelsOffAt)),
        };
    }
}
