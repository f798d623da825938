using System.Collections.Immutable;
using Assistant.Trade.Rules.Derivation;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Rules;

/// <summary>Weighs every fault and says how far each is shown.</summary>
internal static class Verdict
{
    /// <summary>A fault is likely when the next best fits so much worse, in squared errors: two errors.</summary>
    private const double LikelyMargin = 4;

    /// <summary>And established from three errors on.</summary>
    private const double EstablishedMargin = 9;

    /// <summary>A fault fits badly when its symptoms are three and a half errors out, taken together.</summary>
    private const double RuledOutMisfit = 12;

    /// <summary>By which another fault must fit better before a badly fitting one is out.</summary>
    private const double RuledOutMargin = 6;

    /// <summary>So badly that it is out even where nothing fits better.</summary>
    private const double HopelessMisfit = 40;

    public static ImmutableArray<Finding> Of(PlantState state, SymptomTable table)
    {
        var weighings = new Weighing[FaultRules.All.Length];
        var count = 0;
        var noFaultIsJudgeable = NoFaultIsJudgeable(table);
        foreach (var rule in FaultRules.All)
        {
            var weighing = Weighing.Of(rule, table);
            if (rule.Code == FaultCode.NoFault ? noFaultIsJudgeable : weighing.Support > 0)
            {
                weighings[count++] = weighing;
            }
        }

        Array.Sort(weighings, 0, count, BestFirst.Instance);
        return Findings(state, table, weighings.AsSpan(0, count));
    }

    private static ImmutableArray<Finding> Findings(PlantState state, SymptomTable table, ReadOnlySpan<Weighing> sorted)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>(sorted.Length + 1);
        var open = 0;
        for (var i = 0; i < sorted.Length; i++)
        {
            if (!IsOut(sorted[i], sorted[0]))
            {
                var standing = open++ > 0 ? Standing.Possible : StandingOf(sorted[i], i + 1 < sorted.Length ? sorted[i + 1].Misfit - sorted[i].Misfit : double.PositiveInfinity);
                findings.Add(Explained(sorted[i], standing, state, table));
            }
        }

        if (open == 0)
        {
            return [new(FaultCode.NotEnoughEvidence, Standing.Possible, [], [], "")];
        }

        foreach (var weighing in sorted)
        {
            if (IsOut(weighing, sorted[0]))
            {
                findings.Add(Explained(weighing, Standing.RuledOut, state, table));
            }
        }

        return findings.DrainToImmutable();
    }

    private static bool IsOut(in Weighing weighing, in Weighing best) =>
        weighing.Misfit > HopelessMisfit || (weighing.Misfit >= RuledOutMisfit && weighing.Misfit >= best.Misfit + RuledOutMargin);

    private static Standing StandingOf(in Weighing weighing, double margin) =>
        margin < LikelyMargin ? Standing.Possible
        : margin >= EstablishedMargin && weighing is { IsProven: true, IsContradicted: false } ? Standing.Established
        : Standing.Likely;

    private static Finding Explained(in Weighing weighing, Standing standing, PlantState state, SymptomTable table)
    {
        var rule = weighing.Rule;
        var because = ImmutableArray.CreateBuilder<Reason>();
        var against = ImmutableArray.CreateBuilder<Reason>();
        for (var i = 0; i < SymptomTable.Count; i++)
        {
            var symptom = (Symptom)i;
            var measure = table[symptom];
            if (!measure.IsKnown || rule.Expects(symptom) is not { } expectation)
            {
                continue;
            }

            if (expectation.Misfit(measure) >= Weighing.Contradiction)
            {
                against.Add(Reasons.Of(symptom, state, measure));
            }
            else if (standing != Standing.RuledOut && Weighing.Supports(rule, expectation, measure))
            {
                because.Add(Reasons.Of(symptom, state, measure));
            }
        }

        return new(rule.Code, standing, because.DrainToImmutable(), against.DrainToImmutable(), rule.Source);
    }

    // A sound plant is shown by its numbers being where they belong: one of the low side, one of the liquid, one of the head.
    private static bool NoFaultIsJudgeable(SymptomTable table)
    {
        var known = 0;
        known += table.Knows(Symptom.SuperheatExcess) ? 1 : 0;
        known += table.Knows(Symptom.Subcooling) || table.Knows(Symptom.SightGlass) ? 1 : 0;
        known += table.Knows(Symptom.HeadExcess) ? 1 : 0;
        known += table.Knows(Symptom.TdShare) ? 1 : 0;
        return known >= 3;
    }

    private sealed class BestFirst : IComparer<Weighing>
    {
        public static BestFirst Instance { get; } = new();

        public int Compare(Weighing x, Weighing y) => x.Misfit != y.Misfit ? x.Misfit.CompareTo(y.Misfit) : x.Rule.Code.CompareTo(y.Rule.Code);
    }
}
