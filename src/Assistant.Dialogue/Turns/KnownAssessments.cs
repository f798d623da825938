using System.Runtime.CompilerServices;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>What the rules made of facts, kept for as long as the facts are: a turn asks several times over, and most turns ask what the one before them did.</summary>
internal sealed class KnownAssessments(Assess assess)
{
    private readonly ConditionalWeakTable<FactSet, Assessment> known = [];

    public Assessment Of(FactSet facts) => known.GetOrAdd(facts, static (f, rules) => rules(f), assess);
}
