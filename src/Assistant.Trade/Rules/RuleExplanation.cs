using System.Collections.Immutable;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Rules;

/// <summary>A rule laid open for "why": what its fault shows, within which numbers, what proves it, and where that is written.</summary>
/// <param name="Source">A standard, handbook or paper by name, or "common practice".</param>
/// <param name="Test">The facts that tell the fault from its neighbours, the best first.</param>
public sealed record RuleExplanation(
    FaultCode Code,
    string Source,
    ImmutableArray<RuleSign> Signs,
    ImmutableArray<Fact> Test,
    ImmutableArray<CautionCode> Cautions)
{
    /// <summary>The rule of that fault; null for not-enough-evidence, which is the want of a rule.</summary>
    public static RuleExplanation? Of(FaultCode code) =>
        code == FaultCode.NotEnoughEvidence ? null : Of(FaultRules.Of(code));

    private static RuleExplanation Of(FaultRule rule) =>
        new(rule.Code, rule.Source, [.. rule.Shows.Select(RuleSign.Of)], rule.Test, rule.Cautions);
}

/// <summary>One sign of a fault: a range of a number against what is usual, or the words that are seen.</summary>
/// <param name="Name">The symptom in kebab-case, as the reasons are keyed.</param>
/// <param name="Low">Lower end in K or as a ratio; null where open.</param>
/// <param name="High">Upper end in K or as a ratio; null where open.</param>
/// <param name="Words">The observed words that fit; empty for a number.</param>
/// <param name="IsProof">It must be in, beyond instrument error, before the fault is established.</param>
public sealed record RuleSign(string Name, double? Low, double? High, ImmutableArray<string> Words, bool IsProof)
{
    internal static RuleSign Of(Expectation expectation)
    {
        var words = Reasons.FactOf(expectation.Symptom)?.Choices.Where((_, i) => (expectation.Words & (1 << i)) != 0).ToImmutableArray() ?? [];
        return new(
            Codes.KebabOf(expectation.Symptom.ToString()),
            expectation.Words != 0 || double.IsInfinity(expectation.Low) ? null : expectation.Low,
            expectation.Words != 0 || double.IsInfinity(expectation.High) ? null : expectation.High,
            words,
            expectation.IsProof);
    }
}
