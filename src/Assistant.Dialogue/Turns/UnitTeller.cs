using Assistant.Dialogue.Visits;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Turns;

/// <summary>"use psi", "switch to celsius": what a bare number means from here on.</summary>
internal static class UnitTeller
{
    public static void Choose(TurnDraft draft, UnitSystem units)
    {
        if (draft.State.Units != units)
        {
            draft.Emit(new UnitsChosen(units == UnitSystem.Us ? "us" : "metric") { At = draft.At, By = draft.By });
        }

        draft.Say(Key(units));
        if (draft.Opening.Units != units && draft.Opening.Facts.Values.Any())
        {
            draft.Say("units.before");
        }
    }

    public static string Key(UnitSystem units) => units == UnitSystem.Us ? "units.us" : "units.metric";
}
