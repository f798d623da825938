using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;
using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Dialogue.Judgements;

/// <summary>What the rise of an isolated vacuum tells: tight, moisture or a leak. Limits and kinetics: <see cref="VacuumDecay"/>.</summary>
internal sealed record VacuumDecayJudgement() : Judgement(
    "vacuum-decay",
    ["tight", "moisture", "leak", "not-deep-enough", "too-short"],
    [FactCatalogue.VacuumLevel, FactCatalogue.ElapsedTime, FactCatalogue.AmbientTemperature, FactCatalogue.BoxTemperature])
{
    // Where nothing is known of the place, water is reckoned at room temperature.
    private static readonly CelsiusTemperature Room = new(20);

    // What is left of the quarter hour, but never a reminder so soon that nothing can have changed.
    private static readonly TimeSpan Soonest = TimeSpan.FromMinutes(5);

    public override Judged Judge(JudgementView view)
    {
        var course = view.Elapsed(FactCatalogue.VacuumLevel);
        ImmutableArray<VacuumReading> readings = [.. course.Select(c => new VacuumReading(Duration.FromSeconds(c.Elapsed.TotalSeconds), new(c.Reading.Canonical)))];
        var places = new[] { FactCatalogue.AmbientTemperature, FactCatalogue.BoxTemperature }.Select(view.Facts.Temperature).OfType<CelsiusTemperature>().ToList();
        var warmest = places.Count == 0 ? Room : places.MaxBy(t => t.Degrees);
        var verdict = VacuumDecay.Judge(readings, warmest);
        var left = TimeSpan.FromSeconds(VacuumDecay.ShortestTest.Seconds) - (course.IsEmpty ? TimeSpan.Zero : course[^1].Elapsed);
        var (first, last) = course.IsEmpty ? (0, 0) : (course[0].Reading.Canonical, course[^1].Reading.Canonical);
        return new(
            Outcome(verdict),
            ("first", new Amount(first, Dimension.Vacuum)),
            ("last", new Amount(last, Dimension.Vacuum)),
            ("time", new Amount(course.IsEmpty ? 0 : course[^1].Elapsed.TotalSeconds, Dimension.Time)),
            ("rest", new Amount(Math.Max(Soonest.TotalSeconds, left.TotalSeconds), Dimension.Time)))
        {
            Because = [Limits(), .. Water(places)],
            Remind = verdict == VacuumVerdict.TooShort ? (left > Soonest ? left / 2 > Soonest ? left / 2 : left : Soonest) : null,
        };
    }

    private static Reason Limits() => new(
        "judged.vacuum.limits",
        ("target", new Amount(VacuumDecay.Target.Pascals, Dimension.Vacuum)),
        ("ceiling", new Amount(VacuumDecay.Ceiling.Pascals, Dimension.Vacuum)),
        ("least", new Amount(VacuumDecay.ShortestTest.Seconds, Dimension.Time)));

    // In the cold ice keeps its vapour under the limit: the test can then pass a wet system.
    private static IEnumerable<Reason> Water(List<CelsiusTemperature> places)
    {
        if (places.Count > 0 && places.MinBy(t => t.Degrees) is var coldest && VacuumDecay.HidesIce(coldest))
        {
            yield return new("judged.vacuum.ice", ("place", coldest), ("water", new Amount(WaterVapour.OverIce(coldest).Pascals, Dimension.Vacuum)));
        }
    }

    private static string Outcome(VacuumVerdict verdict) => verdict switch
    {
        VacuumVerdict.Tight => "tight",
        VacuumVerdict.Moisture => "moisture",
        VacuumVerdict.Leak => "leak",
        VacuumVerdict.NotDeepEnough => "not-deep-enough",
        _ => "too-short",
    };
}
