using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Records.Plots.Drawing;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Records.Plots;

/// <summary>The vacuum after the pump was shut off: a straight climb leaks, one that levels high is moisture, a low flat one is dry and tight.</summary>
public static class VacuumPlot
{
    public const string Name = "vacuum";

    // Where nothing is known of the place, water is reckoned at room temperature.
    private static readonly CelsiusTemperature Room = new(20);

    /// <summary>The plot, or null with fewer than two readings since isolation.</summary>
    public static Plot? Of(PlottedVisit visit, PhraseBook phrases)
    {
        ArgumentNullException.ThrowIfNull(visit);
        var course = visit.Course.Vacuum;
        if (course.Length < 2)
        {
            return null;
        }

        var words = new PlotWords(phrases, visit.Units);
        return new(Name, words.Say("vacuum.title"), string.Join(' ', Alt(visit, words)), Draw(visit, words));
    }

    private static PlotDrawing Draw(PlottedVisit visit, PlotWords words)
    {
        var unit = words.IsUs ? UnitOfMeasure.Micron : UnitOfMeasure.Pascal;
        var points = visit.Course.Vacuum.Select(r => (X: r.Elapsed.Minutes, Y: unit.FromCanonical(r.Pressure.Pascals))).ToList();
        var ceiling = unit.FromCanonical(VacuumDecay.Ceiling.Pascals);
        var frame = new PlotFrame(
            Axis.Around(words.Axis("isolated", "min"), points.Select(p => p.X), fromZero: true),
            Axis.Around(words.Axis("vacuum", unit.Symbol), points.Select(p => p.Y).Append(ceiling), fromZero: true));
        List<(double Y, string Words)> levels =
        [
            (unit.FromCanonical(VacuumDecay.Target.Pascals), words.Say("vacuum.target", ("vacuum", Amount(VacuumDecay.Target)))),
            (ceiling, words.Say("vacuum.ceiling", ("vacuum", Amount(VacuumDecay.Ceiling)))),
        ];
        if (Water(visit) is { } water)
        {
            levels.Add((unit.FromCanonical(water.Pascals), words.Say("vacuum.water", ("vacuum", Amount(water)))));
        }

        var (guides, labels) = frame.Levels(atRight: true, levels);
        var empty = frame.Empty();
        return new([.. empty.Strokes, .. guides, frame.Line(Ink.Measured, points)], [.. points.Select(p => frame.Dot(p.X, p.Y))], [.. empty.Labels, .. labels]);
    }

    private static IEnumerable<string> Alt(PlottedVisit visit, PlotWords words)
    {
        var course = visit.Course.Vacuum;
        var verdict = VacuumDecay.Judge(course, visit.Facts.Temperature(FactCatalogue.AmbientTemperature) ?? Room);
        yield return words.Say("vacuum.readings", ("readings", PlotWords.List(
            [.. course.Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.Elapsed.Minutes:0.#} min {words.Written(Amount(r.Pressure))}"))])));
        yield return words.Say($"vacuum.{Word(verdict)}");
        yield return words.Say(
            "vacuum.limits", ("target", Amount(VacuumDecay.Target)), ("ceiling", Amount(VacuumDecay.Ceiling)), ("time", new Amount(VacuumDecay.ShortestTest.Seconds, Dimension.Time)));
        if (Water(visit) is { } water)
        {
            yield return words.Say("vacuum.water-at", ("vacuum", Amount(water)), ("place", visit.Facts.Temperature(FactCatalogue.AmbientTemperature)!.Value));
        }
    }

    private static string Word(VacuumVerdict verdict) => verdict switch
    {
        VacuumVerdict.Tight => "tight",
        VacuumVerdict.Moisture => "moisture",
        VacuumVerdict.Leak => "leak",
        VacuumVerdict.NotDeepEnough => "not-deep",
        VacuumVerdict.TooShort => "too-short",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "A verdict without a sentence."),
    };

    private static AbsolutePressure? Water(PlottedVisit visit) =>
        visit.Facts.Temperature(FactCatalogue.AmbientTemperature) is { } place ? WaterVapour.At(place) : null;

    private static Amount Amount(AbsolutePressure pressure) => new(pressure.Pascals, Dimension.Vacuum);
}
