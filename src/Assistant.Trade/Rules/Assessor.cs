using System.Collections.Immutable;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Derivation;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Rules;

/// <summary>The rule core: facts in, verdicts with their reasons out. Pure and deterministic.</summary>
public static class Assessor
{
    public static Assessment Assess(FactSet facts)
    {
        var state = new PlantState(facts);
        var table = SymptomReader.Read(state);
        var findings = Verdict.Of(state, table);
        return new(findings, Derivations.Of(state), CautionTriggers.For(facts, findings), Next(facts, table, findings), []);
    }

    private static Fact? Next(FactSet facts, SymptomTable table, ImmutableArray<Finding> findings)
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

        if (count < 2)
        {
            // With one fault or none in sight, every other still has to be told from it.
            for (var code = 0; code < FaultRules.All.Length; code++)
            {
                if (findings[0].Code != (FaultCode)code)
                {
                    leading[count++] = (FaultCode)code;
                }
            }
        }

        return NextFact.For(facts, table, leading[..count]);
    }
}
