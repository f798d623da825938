using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Dialogue.Judgements;

/// <summary>
/// Whether the room comes down to its setpoint and when, by the fit of its temperatures since the walk began (<see cref="PullDown"/>): at
/// least three over half an hour.
/// </summary>
internal sealed record PullDownJudgement() : Judgement(
    "pull-down",
    ["there", "on-its-way", "will-not", "too-early", "unknown"],
    [FactCatalogue.BoxTemperature, FactCatalogue.Setpoint, FactCatalogue.ElapsedTime])
{
    /// <summary>Before this a fit follows the door and not the plant. Common practice.</summary>
    private static readonly TimeSpan Shortest = TimeSpan.FromMinutes(30);

    private static readonly TimeSpan NextReading = TimeSpan.FromMinutes(15);

    public override Judged Judge(JudgementView view)
    {
        if (view.Facts.Temperature(FactCatalogue.Setpoint) is not { } setpoint)
        {
            return new("unknown");
        }

        var course = view.Elapsed(FactCatalogue.BoxTemperature);
        if (course.IsEmpty)
        {
            return new("unknown");
        }

        var now = new CelsiusTemperature(course[^1].Reading.Canonical);
        if (!Rounding.IsOver(now, setpoint))
        {
            return new("there", ("box", now), ("setpoint", setpoint));
        }

        var readings = course.Select(c => new BoxReading(Duration.FromSeconds(c.Elapsed.TotalSeconds), new(c.Reading.Canonical))).ToImmutableArray();
        if (course[^1].Elapsed < Shortest || PullDown.Fit(readings, setpoint) is not { } fit)
        {
            return new("too-early", ("box", now), ("setpoint", setpoint), ("least", new Amount(Shortest.TotalSeconds, Dimension.Time))) { Remind = NextReading };
        }

        return fit.ToSetpoint is { } left
            ? new("on-its-way", ("box", now), ("setpoint", setpoint), ("left", new Amount(left.Seconds, Dimension.Time)), ("end", fit.LevelsOffAt))
            : new("will-not", ("box", now), ("setpoint", setpoint), ("end", fit.LevelsOffAt));
    }
}
