using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>
/// The fault that is being put right: the one that leads, else the one the repair was reached for. What is read during a repair no longer shows the
/// fault as it was, and takes nothing back.
/// </summary>
internal static class FaultInHand
{
    /// <summary>The fault at a stop that waits for its repair, or null.</summary>
    public static FaultCode? At(VisitState state, WalkStop stop, Finding? leader) => stop.Kind != StopKind.Acts ? null
        : leader?.Code ?? (state.Stop == stop.Name && IsUnderRepair(state) && state.About == state.LastVerdict!.Fault ? Codes.FindFault(state.About) : null);

    /// <summary>True from when another walk was begun on an established fault until it is put right.</summary>
    public static bool IsUnderRepair(VisitState state) => state.LastVerdict is { Standing: "established" } last
        && !state.Mended.Exists(m => m.Fault == last.Fault) && state.Runs.All.Any(r => r.StartedBy > last.Number && r.Walk != WalkLibrary.OpeningWalk);
}
