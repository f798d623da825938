using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade;
using Assistant.Trade.Cautions;

namespace Assistant.Dialogue.Turns;

/// <summary>Gives a caution once per person, place and day, and again right before the hazardous step.</summary>
internal sealed class CautionGiver(PhraseBook book)
{
    public void Once(TurnDraft draft, CautionCode caution, string place)
    {
        var given = new GivenCaution(Codes.Of(caution), draft.By, place, DateOnly.FromDateTime(draft.At.Date));
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
            draft.Emit(new CautionGiven(code, place) { At = draft.At, By = draft.By });
        }
    }
}
