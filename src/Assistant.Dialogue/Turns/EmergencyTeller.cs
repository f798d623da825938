using System.Globalization;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>That somebody called an emergency: whoever asks how the visit stands hears it before anything of the plant.</summary>
internal static class EmergencyTeller
{
    /// <summary>The sentence that says it, or null where none was called.</summary>
    public static string? Key(VisitState state) => state.Emergency is null ? null : state.IsEmergency ? "emergency.open" : "emergency.was";

    public static ReasonPart[] Parts(VisitState state) => [("person", state.Emergency!.By), ("clock", state.Emergency.At.ToString("HH:mm", CultureInfo.InvariantCulture))];
}
