using System.Collections.Immutable;
using Assistant.Trade.Rules.Derivation;
using Assistant.Trade.Rules.Evidence;
using Assistant.Trade.Rules.Plausibility;

namespace Assistant.Trade.Rules;

/// <summary>Weighs every fault and says how far each is shown.</summary>
internal static class Verdict
{
    /// <summary>A fault is likely when the next best fits so much worse, in squared errors: two errors.</summary>
    public const double LikelyMargin = 4;

    /// <summary>And established from three errors on.</summary>
    private const double EstablishedMargin = 9;

    /// <summary>A fault fits badly when its symptoms are three and a half errors out, taken together.</summary>
    private const double RuledOutMisfit = 12;

    /// <summary>By which another fault must fit better before a badly fitting one is out.</summary>
    private const double RuledOutMargin = 6;

    /// <summary>A difference that instruments alone may make: within it the two fit alike.</summary>
    private const double OneError = 1;

    /// <summary>So badly that it is out even where nothing fits better.</summary>
    private const double HopelessMisfit = 40;

    /// <param name="doubts">How far the set of readings has shown itself to be unsafe.</param>
    /// <param name="outside">What of this plant lies outside the rules, or null.</param>
    public static ImmutableArray<Finding> Of(PlantState state, SymptomTable table, ReadOnlySpan<Weighing> ranking, Doubt doubts, Reason? outside)
    {
        var findings = Findings(state, table, ranking, doubts);
        if (outside is not null)
        {
            findings = findings.SetItem(0, Qualified(findings[0], outside));
        }

        return doubts == Doubt.OfTheVerdict && findings[0].Code != FaultCode.NotEnoughEvidence
            ? findings.Insert(0, NotEnough with { Because = [new("reason.readings-questioned")] }).SetItem(1, AtMost(findings[0], Standing.Possible))
            : findings;
    }

    // Nothing is established of a plant the rules were not written for; what is seen with the eyes needs no table.
    private static Finding Qualified(Finding finding, Reason outside) =>
        outside.Key == OutsideTheRules.NoTable && finding.Code != FaultCode.NotEnoughEvidence ? finding with { Against = finding.Against.Add(outside) } :
        outside.Key == OutsideTheRules.ElectronicValve && finding.Code is not (FaultCode.ExpansionValveStarving or FaultCode.ExpansionValveOverfeeding) ? finding
        : finding.Code == FaultCode.NotEnoughEvidence ? finding with { Because = [outside] } : AtMost(finding, Standing.Likely) with { Against = finding.Against.Add(outside) };

    /// <summary>True where the readings, if they are to be trusted, establish the first fault.</summary>
    public static bool WouldEstablish(ReadOnlySpan<Weighing> ranking, SymptomTable table) =>
        !ranking.IsEmpty && StandingOf(ranking[0], Margin(ranking, 0, table)) == Standing.Established;

    private static Finding NotEnough { get; } = new(FaultCode.NotEnoughEvidence, Standing.Possible, [], [], "");

    private static Finding AtMost(Finding finding, Standing standing) => finding with { Standing = (Standing)Math.Max((int)finding.Standing, (int)standing) };

    private static ImmutableArray<Finding> Findings(PlantState state, SymptomTable table, ReadOnlySpan<Weighing> sorted, Doubt doubts)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>(sorted.Length + 1);
        var open = 0;
        for (var i = 0; i < sorted.Length; i++)
        {
            if (!IsOut(sorted[i], sorted[0]))
            {
                var standing = open++ > 0 ? Standing.Possible : StandingOf(sorted[i], Margin(sorted, i, table));
                standing = standing == Standing.Established && (doubts != Doubt.None || !KnowsEnough(sorted[i].Rule, table)) ? Standing.Likely : standing;
                findings.Add(Explained(sorted[i], standing, state, table));
            }
        }

        if (open == 0)
        {
            return [NotEnough];
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

    private static bool KnowsEnough(FaultRule rule, SymptomTable table)
    {
        foreach (var symptom in rule.EstablishedOnlyWith)
        {
            if (!table.Knows(symptom) || !Weighing.Supports(rule, rule.Expects(symptom)!.Value, table[symptom]))
            {
                return false;
            }
        }

        return true;
    }

    // Beside a sound plant a fault without a sign of its own is no rival, only not excluded; nor beside a proven fault one that it explains.
    private static double Margin(ReadOnlySpan<Weighing> sorted, int first, SymptomTable table)
    {
        for (var i = first + 1; i < sorted.Length; i++)
        {
            var isRival = sorted[first].Rule.Code == FaultCode.NoFault ? sorted[i].IsOtherThanSound
                : sorted[i].Misfit - sorted[first].Misfit < OneError || !sorted[first].Explains(sorted[i], table);
            if (isRival)
            {
                return sorted[i].Misfit - sorted[first].Misfit;
            }
        }

        return double.PositiveInfinity;
    }

    private static bool IsOut(in Weighing weighing, in Weighing best) =>
        weighing.Misfit > HopelessMisfit || (weighing.Misfit >= RuledOutMisfit && weighing.Misfit >= best.Misfit + RuledOutMargin);

    // A fault that shows nothing a sound plant would not show is possible at most.
    private static Standing StandingOf(in Weighing weighing, double margin) =>
        weighing is { Rule.Code: FaultCode.SensorError, IsProven: true } ? Standing.Established
        : margin < LikelyMargin || !(weighing.IsOtherThanSound || weighing.Rule.Code == FaultCode.NoFault) ? Standing.Possible
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
                because.Add(Reasons.Of(symptom, state, measure, isInOrder: rule.Code == FaultCode.NoFault));
            }
        }

        return new(rule.Code, standing, because.DrainToImmutable(), against.DrainToImmutable(), rule.Source);
    }
}
