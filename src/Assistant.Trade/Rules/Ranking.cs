using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Rules;

/// <summary>The faults something speaks for, the best fitting first, ties in the contract's order.</summary>
internal static class Ranking
{
    public static ReadOnlySpan<Weighing> Of(SymptomTable table)
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
        return weighings.AsSpan(0, count);
    }

    // A sound plant is shown by its numbers being where they belong: of the low side, of the liquid, of the head.
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
