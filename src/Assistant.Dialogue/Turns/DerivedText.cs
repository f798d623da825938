using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;
using static Assistant.Trade.Facts.FactCatalogue;

namespace Assistant.Dialogue.Turns;

/// <summary>Says what a reading means by calculation, right after it was taken: a pressure as its temperature, a pair as its difference.</summary>
internal static class DerivedText
{
    public static void Say(TurnDraft draft, DerivedValues derived, IEnumerable<FactValue> taken, FactSet facts)
    {
        var now = taken.Select(v => v.Fact).ToHashSet();
        if (now.Contains(DischargePressure) && derived.SaturatedCondensingTemperature is { } sct)
        {
            draft.Say("derived.saturated-condensing", ("sct", sct));
        }

        if (now.Overlaps([DischargePressure, AmbientTemperature, SaturatedCondensingTemperature]) && derived.CondenserSplit is { } split)
        {
            if (facts.Difference(DesignCondenserSplit) is { } plate)
            {
                draft.Say("derived.split-against-plate", ("split", split), ("plate", plate));
            }
            else
            {
                draft.Say("derived.split", ("split", split));
            }
        }

        if (now.Overlaps([SuctionPressure, SuctionPressureAtEvaporator]) && derived.SaturatedSuctionTemperature is { } sst)
        {
            draft.Say("derived.saturated-suction", ("sst", sst));
        }

        if (now.Overlaps([SuctionPressure, SuctionPressureAtEvaporator, SuctionLineTemperatureAtBulb, SuctionLineTemperatureAtCompressor])
            && derived.Superheat is { } superheat && IsOfNow(draft.State, SuctionPressure, SuctionPressureAtEvaporator, SaturatedSuctionTemperature)
            && IsOfNow(draft.State, SuctionLineTemperatureAtBulb, SuctionLineTemperatureAtCompressor))
        {
            draft.Say(derived.SuperheatIsApproximate ? "derived.superheat-approximate" : "derived.superheat", ("superheat", superheat));
        }

        if (now.Overlaps([LiquidPressure, LiquidLineTemperature, DischargePressure, CondenserOutletTemperature]) && derived.Subcooling is { } subcooling
            && IsOfNow(draft.State, DischargePressure, LiquidPressure, SaturatedCondensingTemperature) && IsOfNow(draft.State, LiquidLineTemperature, CondenserOutletTemperature))
        {
            draft.Say("derived.subcooling", ("subcooling", subcooling));
        }
    }

    // In a walk that changes the plant, a reading from before it and one from now make no difference of anything: one of these was read since.
    private static bool IsOfNow(VisitState state, params ReadOnlySpan<Fact> facts)
    {
        if (state.Run is not { } run || run.Walk == WalkLibrary.OpeningWalk)
        {
            return true;
        }

        foreach (var fact in facts)
        {
            if (state.History.TryGetValue(fact, out var entries) && entries[^1] is { Value: not null } latest && latest.Number > run.StartedBy)
            {
                return true;
            }
        }

        return false;
    }
}
