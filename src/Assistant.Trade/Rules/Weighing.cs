using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Rules;

/// <summary>One fault set against the symptoms: how badly they fit it, and whether anything speaks for it.</summary>
/// <param name="Misfit">Sum of squared errors by which the symptoms lie outside what the fault would show.</param>
/// <param name="Support">How many of the fault's own signs are seen that a sound plant would not show.</param>
/// <param name="IsOtherThanSound">At least one of those signs lies outside what a sound plant shows.</param>
/// <param name="IsProven">All of the discriminating signs are in, beyond instrument error.</param>
/// <param name="IsContradicted">A symptom lies clearly outside what the fault would show.</param>
internal readonly record struct Weighing(FaultRule Rule, double Misfit, int Support, bool IsOtherThanSound, bool IsProven, bool IsContradicted)
{
    /// <summary>From here a single symptom speaks against a fault: two of its errors out.</summary>
    public const double Contradiction = 4;

    /// <summary>Decimals of a misfit: two faults that fit alike are equal in every system of units, whatever the last bit says.</summary>
    private const int Decimals = 9;

    /// <summary>The fault by its usual picture, or by another whose own proofs are all seen where that fits better.</summary>
    public static Weighing Best(FaultRule rule, SymptomTable table)
    {
        var best = Of(rule, table);
        foreach (var way in rule.OtherWays)
        {
            if (!ProofsFit(way, table))
            {
                continue;
            }

            var other = Of(way, table);
            best = best.Support == 0 || other.Misfit < best.Misfit || (other.Misfit <= best.Misfit && other.IsProven) ? other : best;
        }

        return best;
    }

    private static bool ProofsFit(FaultRule rule, SymptomTable table)
    {
        foreach (var expectation in rule.Shows)
        {
            if (expectation.IsProof && (!table.Knows(expectation.Symptom) || !expectation.Fits(table[expectation.Symptom])))
            {
                return false;
            }
        }

        return true;
    }

    public static Weighing Of(FaultRule rule, SymptomTable table)
    {
        var misfit = 0.0;
        var contradicted = false;
        for (var i = 0; i < SymptomTable.Count; i++)
        {
            // What is not known fits every fault, and most is not known for most of a call.
            var measure = table[(Symptom)i];
            if (measure.IsKnown && rule.Expects((Symptom)i) is { } expectation)
            {
                var part = expectation.Misfit(measure);
                misfit += part;
                contradicted |= part >= Contradiction;
            }
        }

        var support = 0;
        var other = false;
        var proven = true;
        var proofs = 0;
        foreach (var expectation in rule.Shows)
        {
            var measure = table[expectation.Symptom];
            if (IsSign(expectation, measure))
            {
                var differs = Differs(expectation, measure);
                other |= differs;

                // A clear glass or a call for cooling is seen on every sound plant too: alone it hints at nothing.
                support += differs || expectation.Words == 0 ? 1 : 0;
            }

            if (expectation.IsProof)
            {
                proofs++;
                proven &= expectation.HoldsBeyondError(measure);
            }
        }

        return new(rule, Math.Round(misfit, Decimals), support, other, proven && proofs > 0, contradicted);
    }

    /// <summary>True where this fault, being proven, leaves nothing for the other to explain: each of the other's signs is one that this fault shows as well.</summary>
    public bool Explains(in Weighing other, SymptomTable table)
    {
        // A sound plant needs no explaining.
        if (!IsProven || IsContradicted || other.Rule.Code == FaultCode.NoFault)
        {
            return false;
        }

        foreach (var expectation in other.Rule.Shows)
        {
            var measure = table[expectation.Symptom];
            if (IsSign(expectation, measure) && !(Rule.Expects(expectation.Symptom) is { } own && own.Fits(measure)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True where the measure is one of the signs the fault is named by; for a sound plant, any number that is where it belongs.</summary>
    public static bool Supports(FaultRule rule, in Expectation expectation, Measure measure) =>
        rule.Code == FaultCode.NoFault ? (expectation.Words == 0 || expectation.Symptom == Symptom.PullingDown) && expectation.Fits(measure) : rule.Names(expectation.Symptom) && (IsSign(expectation, measure) || (expectation.IsProof && expectation.Fits(measure)));

    // It fits, and would not fit a sound plant; or it is one of the fault's proofs and fits.
    private static bool IsSign(in Expectation expectation, Measure measure) =>
        measure.IsKnown && !expectation.IsNeutral && expectation.Fits(measure)
        && (expectation.IsProof || expectation.HintsAt(measure) || Differs(expectation, measure));

    private static bool Differs(in Expectation expectation, Measure measure) =>
        Healthy.Of(expectation.Symptom) is { } healthy && healthy.Misfit(measure) >= 1;
}
