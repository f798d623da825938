using System.Collections.Frozen;
using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade;
using Assistant.Trade.Cautions;

namespace Assistant.Dialogue.Turns;

/// <summary>Gives a caution once per person, place and day, and again right before the hazardous step.</summary>
internal sealed class CautionGiver(PhraseBook book)
{
    private const string Room = "room";
    private const string Unit = "unit";

    private static readonly FrozenSet<CautionCode> HandsOn = new[]
    {
        CautionCode.LockOut, CautionCode.Electrical, CautionCode.MovingFan, CautionCode.HotSurface, CautionCode.LiquidRefrigerant,
        CautionCode.TrappedLiquid, CautionCode.NoVenting, CautionCode.LiquidToSuction, CautionCode.IceRemoval,
    }.ToFrozenSet();

    /// <summary>Gives what the facts call for: the surroundings' dangers at once, the hands' with the verdict that sends them there.</summary>
    /// <param name="isVerdictTold">True where the leading fault has been said.</param>
    public void Open(TurnDraft draft, ImmutableArray<CautionCode> open, string place, bool isVerdictTold)
    {
        foreach (var caution in open)
        {
            switch (caution)
            {
                // The room's own danger is told in the room.
                case CautionCode.TrappedInside when place != Room:
                case var hands when HandsOn.Contains(hands) && !isVerdictTold:
                    break;

                default:
                    Once(draft, caution, place);
                    break;
            }
        }
    }

    public void Once(TurnDraft draft, CautionCode caution, string place)
    {
        var given = new GivenCaution(Codes.Of(caution), draft.By, PlaceOf(caution, place), DateOnly.FromDateTime(draft.At.Date));
        if (!draft.State.Cautions.Contains(given))
        {
            Now(draft, caution, place);
        }
    }

    public void Now(TurnDraft draft, CautionCode caution, string place)
    {
        var code = Codes.Of(caution);
        if (!draft.Gives(code))
        {
            draft.Give(new(code, book.Say("caution." + code, draft.State.Units)));
            draft.Emit(new CautionGiven(code, PlaceOf(caution, place)) { At = draft.At, By = draft.By });
        }
    }

    // The way up is to the unit from wherever it is spoken of, and what the food needs is told once, wherever it is learned.
    private static string PlaceOf(CautionCode caution, string place) => caution switch
    {
        CautionCode.Ladder or CautionCode.RoofWeather => Unit,
        CautionCode.FoodSafety => Room,
        _ => place,
    };
}
