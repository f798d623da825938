using System.Collections.Immutable;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Rules;

/// <summary>
/// One fault as the trade knows it: what it shows, what proves it, where that is written, and what to mind when putting it right.
/// </summary>
internal sealed class FaultRule
{
    private readonly bool[] named = new bool[SymptomTable.Count];
    private readonly Expectation?[] pattern = new Expectation?[SymptomTable.Count];

    public FaultRule(FaultCode code, string source, ImmutableArray<CautionCode> cautions, ImmutableArray<Fact> test, params ImmutableArray<Expectation> shows)
    {
        Code = code;
        Source = source;
        Cautions = cautions;
        Test = test;
        Shows = shows;
        foreach (var expectation in Healthy.Expectations)
        {
            pattern[(int)expectation.Symptom] = expectation;
        }

        foreach (var expectation in shows)
        {
            named[(int)expectation.Symptom] = true;
            pattern[(int)expectation.Symptom] = expectation;
        }
    }

    public FaultCode Code { get; }

    /// <summary>Where the rule comes from: a standard, handbook or paper by name, or "common practice".</summary>
    public string Source { get; }

    public ImmutableArray<CautionCode> Cautions { get; }

    /// <summary>The facts that tell this fault from its neighbours, the best first.</summary>
    public ImmutableArray<Fact> Test { get; }

    /// <summary>What this fault shows otherwise than a sound plant.</summary>
    public ImmutableArray<Expectation> Shows { get; }

    /// <summary>What has to speak for the fault before it can be established, whatever else shows; likely at most until then.</summary>
    public ImmutableArray<Symptom> EstablishedOnlyWith { get; init; } = [];

    /// <summary>Other pictures the same fault may show: at rest, or with another kind of control. One counts only where all of its proofs are seen.</summary>
    public ImmutableArray<FaultRule> OtherWays { get; init; } = [];

    /// <summary>What it expects of a symptom, its own or a sound plant's; null where the symptom says nothing of it.</summary>
    public Expectation? Expects(Symptom symptom) => pattern[(int)symptom];

    /// <summary>True where the fault shows this symptom otherwise than a sound plant.</summary>
    public bool Names(Symptom symptom) => named[(int)symptom];
}
