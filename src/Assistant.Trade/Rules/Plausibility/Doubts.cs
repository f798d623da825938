using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules.Derivation;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Rules.Plausibility;

/// <summary>How far the readings of a set can be trusted.</summary>
internal enum Doubt
{
    None,

    /// <summary>A reading may have been miswritten: nothing is established until it is repeated.</summary>
    OfAReading,

    /// <summary>Readings were miswritten, and one more such slip would change the verdict: there is none.</summary>
    OfTheVerdict,
}

/// <summary>
/// Where one reading was miswritten the next may be, and where a reading stands in another unit than all the rest it may be a slip.
/// Such a reading is taken the other way too; a verdict that then changes is not safe.
/// </summary>
internal static class Doubts
{
    /// <summary>How much worse, in squared errors, the other meaning may fit and still be believed.</summary>
    private const double AsBelievable = 3;

    /// <summary>Up to this many readings in the other system are slips rather than a habit.</summary>
    private const int FewInTheOtherSystem = 2;

    public static Doubt Of(FactSet facts, ReadOnlySpan<Weighing> ranking, SymptomTable table, bool anyRejected)
    {
        if (ranking.Length == 0)
        {
            return Doubt.None;
        }

        if (anyRejected)
        {
            var tied = ranking.Length > 1 && ranking[1].Misfit - ranking[0].Misfit < Verdict.LikelyMargin;
            return tied || Changes(facts, ranking, _ => true) ? Doubt.OfTheVerdict : Doubt.OfAReading;
        }

        return Verdict.WouldEstablish(ranking, table) && FewIn(facts) is { } system && Changes(facts, ranking, r => SystemOf(r) == system) ? Doubt.OfAReading : Doubt.None;
    }

    private static bool Changes(FactSet facts, ReadOnlySpan<Weighing> ranking, Func<Reading, bool> suspected)
    {
        var (code, misfit) = (ranking[0].Rule.Code, ranking[0].Misfit);
        foreach (var meant in Screening.OtherMeanings(facts, suspected))
        {
            var other = Ranking.Of(SymptomReader.Read(new PlantState(facts.With(meant))));
            if (other.Length > 0 && other[0].Rule.Code != code && other[0].Misfit <= misfit + AsBelievable)
            {
                return true;
            }
        }

        return false;
    }

    // The system in which only a reading or two stand, where the others stand in the other one.
    private static UnitSystem? FewIn(FactSet facts)
    {
        var us = 0;
        var metric = 0;
        foreach (var value in facts.Values)
        {
            if (value is Reading reading && SystemOf(reading) is { } system)
            {
                us += system == UnitSystem.Us ? 1 : 0;
                metric += system == UnitSystem.Metric ? 1 : 0;
            }
        }

        return us <= FewInTheOtherSystem && metric > 2 * us ? UnitSystem.Us
            : metric <= FewInTheOtherSystem && us > 2 * metric ? UnitSystem.Metric
            : null;
    }

    private static UnitSystem? SystemOf(Reading reading) => reading.Unit.Dimension switch
    {
        Dimension.Temperature => reading.Unit == UnitOfMeasure.Fahrenheit ? UnitSystem.Us : UnitSystem.Metric,
        Dimension.Pressure => reading.Unit == UnitOfMeasure.Psig || reading.Unit == UnitOfMeasure.InchesOfMercuryVacuum ? UnitSystem.Us : UnitSystem.Metric,
        _ => null,
    };
}
