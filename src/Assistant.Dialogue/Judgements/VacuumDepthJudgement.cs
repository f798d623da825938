using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Judgements;

/// <summary>
/// Whether the pump may be shut off: below the target, still falling, or held up by water. A gauge that hardly falls for ten minutes and
/// stands near the vapour pressure of water or ice at the place stands on it (<see cref="WaterVapour"/>); the limits are common practice.
/// </summary>
internal sealed record VacuumDepthJudgement() : Judgement(
    "vacuum-depth",
    ["deep-enough", "not-yet", "on-water"],
    [FactCatalogue.VacuumLevel, FactCatalogue.ElapsedTime, FactCatalogue.AmbientTemperature, FactCatalogue.BoxTemperature])
{
    private static readonly TimeSpan Watched = TimeSpan.FromMinutes(10);
    private static readonly TimeSpan NextReading = TimeSpan.FromMinutes(15);

    // A fall of less than a tenth in that time is none.
    private const double Stalled = 0.9;

    // Within a quarter of the vapour pressure it stands on it.
    private const double NearWater = 0.25;

    public override Judged Judge(JudgementView view)
    {
        var course = view.Elapsed(FactCatalogue.VacuumLevel);
        var last = course.IsEmpty ? double.PositiveInfinity : course[^1].Reading.Canonical;
        var places = new[] { FactCatalogue.AmbientTemperature, FactCatalogue.BoxTemperature }.Select(view.Facts.Temperature).OfType<CelsiusTemperature>().ToList();
        var water = places.Where(p => Math.Abs((last / WaterVapour.At(p).Pascals) - 1) < NearWater).ToList();
        var earlier = course.LastOrDefault(c => course[^1].Elapsed - c.Elapsed >= Watched).Reading;
        if (last <= VacuumDecay.Target.Pascals)
        {
            return new("deep-enough", Vacuum("last", last), Vacuum("target", VacuumDecay.Target.Pascals)) { Because = [.. Ice(places)] };
        }

        return earlier is not null && last > earlier.Canonical * Stalled && water.Count > 0
            ? new("on-water", Vacuum("last", last), ("place", water[0]), Vacuum("water", WaterVapour.At(water[0]).Pascals)) { Remind = NextReading }
            : new("not-yet", Vacuum("last", last), Vacuum("target", VacuumDecay.Target.Pascals)) { Remind = NextReading, Because = [.. Ice(places)] };
    }

    // In the cold ice keeps its vapour under the limit: a deep vacuum then proves nothing.
    private static IEnumerable<Reason> Ice(List<CelsiusTemperature> places)
    {
        if (places.Count > 0 && places.MinBy(t => t.Degrees) is var coldest && VacuumDecay.HidesIce(coldest))
        {
            yield return new("judged.vacuum.ice", ("place", coldest), Vacuum("water", WaterVapour.OverIce(coldest).Pascals));
        }
    }

    private static ReasonPart Vacuum(string name, double pascals) => (name, new Amount(pascals, Dimension.Vacuum));
}
