using System.Collections.Frozen;
using System.Collections.Immutable;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Derivation;
using Assistant.Trade.Rules.Evidence;
using Assistant.Trade.Rules.Plausibility;

namespace Assistant.Trade.Rules;

/// <summary>The rule core: facts in, verdicts with their reasons out. Pure and deterministic.</summary>
public static class Assessor
{
    private static readonly FrozenSet<Fact> NothingSkipped = FrozenSet<Fact>.Empty;

    /// <summary>What takes the plant out of work to read: never asked only to see whether there might be something else besides.</summary>
    private static readonly FrozenSet<Fact> AtRest = [FactCatalogue.HighSideStandingPressure, FactCatalogue.StandingPressure];

    public static Assessment Assess(FactSet facts) => Assess(facts, NothingSkipped);

    /// <param name="skipped">Facts that cannot be had on this visit: they are not asked for.</param>
    public static Assessment Assess(FactSet facts, IReadOnlySet<Fact> skipped)
    {
        facts = Screening.Of(facts, out var rejected);
        var state = new PlantState(facts);
        var table = SymptomReader.Read(state);
        var outside = OutsideTheRules.TakeAway(state, table);
        var ranking = Ranking.Of(table);
        var findings = Verdict.Of(state, table, ranking, Doubts.Of(facts, ranking, table, rejected.Length > 0), outside);
        var basis = HeadSettingBasis.Asked(state, ranking);
        if (basis is not null && findings[0].Standing == Standing.Established)
        {
            findings = findings.SetItem(0, findings[0] with { Standing = Standing.Likely });
        }

        var next = basis is not null && !skipped.Contains(basis) ? basis : Next(facts, skipped, table, findings);
        return new(findings, Derivations.Of(state), CautionTriggers.For(facts, findings), next, rejected);
    }

    // Of one fault in sight its own test comes first: the drier's two ends, the superheat at the bulb.
    private static Fact? OwnTest(FactSet facts, IReadOnlySet<Fact> skipped, FaultCode sole) =>
        FaultRules.All.FirstOrDefault(r => r.Code == sole)?.Test.FirstOrDefault(fact => !facts.Has(fact) && !skipped.Contains(fact));

    private static Fact? Next(FactSet facts, IReadOnlySet<Fact> skipped, SymptomTable table, ImmutableArray<Finding> findings)
    {
        if (findings[0].Standing == Standing.Established)
        {
            return null;
        }

        Span<FaultCode> leading = stackalloc FaultCode[FaultRules.All.Length];
        var count = 0;
        foreach (var finding in findings)
        {
            if (finding.Standing != Standing.RuledOut && finding.Code != FaultCode.NotEnoughEvidence)
            {
                leading[count++] = finding.Code;
            }
        }

        // With one fault or none in sight, every other still has to be told from it.
        if (count < 2)
        {
            var sole = count == 1 ? leading[0] : FaultCode.NotEnoughEvidence;
            if (count == 1 && OwnTest(facts, skipped, sole) is { } own)
            {
                return own;
            }

            // A plant at rest shows no more of it, and what is likely is looked at.
            if (count == 1 && findings[0].Standing == Standing.Likely && facts.Is(FactCatalogue.Compressor, "off"))
            {
                return null;
            }

            if (count == 1)
            {
                skipped = skipped.Count == 0 ? AtRest : skipped.Union(AtRest).ToFrozenSet();
            }

            for (var code = FaultCode.Undercharge; code < FaultCode.NotEnoughEvidence; code++)
            {
                if (code != sole)
                {
                    leading[count++] = code;
                }
            }
        }

        return NextFact.For(facts, skipped, table, leading[..count]);
    }
}
