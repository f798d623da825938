using Assistant.Trade.Rules.Evidence;
using Assistant.Trade.Rules.Faults;

namespace Assistant.Trade.Rules;

/// <summary>The faults something speaks for, the best fitting first; of equals the proven one, then in the contract's order.</summary>
internal static class Ranking
{
    /// <summary>One error, squared: a difference that instruments alone may make.</summary>
    private const double OneError = 1;

    /// <summary>Three quarters of an error, squared: by this a fault that shows nothing out of the usual has to fit better than a sound plant to stand before it.</summary>
    private const double ThreeQuartersOfAnError = 0.5625;

    public static ReadOnlySpan<Weighing> Of(SymptomTable table)
    {
        var weighings = new Weighing[FaultRules.All.Length];
        var count = 0;
        var noFaultIsJudgeable = NoFaultIsJudgeable(table);
        foreach (var rule in FaultRules.All)
        {
            if (rule.Code == FaultCode.NoFault)
            {
                if (noFaultIsJudgeable || ControlIsJudgeable(table))
                {
                    weighings[count++] = Weighing.Of(noFaultIsJudgeable ? rule : NoFault.AtRest, table);
                }

                continue;
            }

            var weighing = Weighing.Best(rule, table);
            if (weighing.Support > 0)
            {
                weighings[count++] = weighing;
            }
        }

        Array.Sort(weighings, 0, count, BestFirst.Instance);
        PutChargeFirst(weighings.AsSpan(0, count), table);
        if (RoomIsHeld(table) || IsPullingDown(table))
        {
            PutSoundFirst(weighings.AsSpan(0, count));
        }

        PutThermometersFirst(weighings.AsSpan(0, count), table);
        return weighings.AsSpan(0, count);
    }

    // Two thermometers that disagree come before all else: which is wrong is settled first, whatever fault shows besides.
    private static void PutThermometersFirst(Span<Weighing> sorted, SymptomTable table)
    {
        if (!SensorError.IsShown(table))
        {
            return;
        }

        for (var at = 1; at < sorted.Length; at++)
        {
            if (sorted[at].Rule.Code == FaultCode.SensorError)
            {
                var apart = sorted[at];
                sorted[..at].CopyTo(sorted[1..]);
                sorted[0] = apart;
            }
        }
    }

    // The plant does what it is there for: the room is no warmer than its control lets it become.
    private static bool RoomIsHeld(SymptomTable table) => table[Symptom.BoxOverCall] is { IsKnown: true } over && over.Value <= over.Error;

    // Something was just put right: the room is on its way, and how warm it still is tells nothing.
    private static bool IsPullingDown(SymptomTable table) => table[Symptom.PullingDown] is { IsKnown: true, Value: Words.Yes };

    // Nothing calls, and two thermometers say how warm the room is: then it can be said whether the control is right to rest.
    private static bool ControlIsJudgeable(SymptomTable table) =>
        table[Symptom.Calling] is { IsKnown: true, Value: Words.No } && table.Knows(Symptom.BoxOverSetpoint)
        && (table.Knows(Symptom.ThermometerGap) || table.Knows(Symptom.ProductOverBox));

    // A fault none of whose signs lies outside what a sound plant shows does not stand before the sound plant, unless it fits better by three quarters of an error.
    private static void PutSoundFirst(Span<Weighing> sorted)
    {
        var sound = 0;
        while (sound < sorted.Length && sorted[sound].Rule.Code != FaultCode.NoFault)
        {
            sound++;
        }

        if (sound == sorted.Length || sorted[sound].IsContradicted)
        {
            return;
        }

        for (; sound > 0 && !sorted[sound - 1].IsOtherThanSound && sorted[sound].Misfit - sorted[sound - 1].Misfit < ThreeQuartersOfAnError; sound--)
        {
            (sorted[sound - 1], sorted[sound]) = (sorted[sound], sorted[sound - 1]);
        }
    }

    // A flashing glass is first a charge question: until a drop across drier or line was looked for, a restriction that fits no better by an error comes after it.
    private static void PutChargeFirst(Span<Weighing> sorted, SymptomTable table)
    {
        if (sorted.Length < 2 || table.Knows(Symptom.DrierDrop) || table.Knows(Symptom.LiquidLineDrop))
        {
            return;
        }

        var (first, second) = (sorted[0], sorted[1]);
        if (first.Rule.Code == FaultCode.LiquidLineRestriction && second.Rule.Code == FaultCode.Undercharge && second.Misfit - first.Misfit < OneError)
        {
            (sorted[0], sorted[1]) = (second, first);
        }
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

        public int Compare(Weighing x, Weighing y) => x.Misfit != y.Misfit ? x.Misfit.CompareTo(y.Misfit)
            : x.IsProven != y.IsProven ? y.IsProven.CompareTo(x.IsProven)
            : x.Rule.Code.CompareTo(y.Rule.Code);
    }
}
