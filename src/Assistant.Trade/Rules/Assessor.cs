using Assistant.Trade.Facts;

namespace Assistant.Trade.Rules;

/// <summary>The rule core: facts in, verdicts with their reasons out. Pure and deterministic.</summary>
public static class Assessor
{
    public static Assessment Assess(FactSet facts) => throw new NotSupportedException("The rules are on their way.");
}
