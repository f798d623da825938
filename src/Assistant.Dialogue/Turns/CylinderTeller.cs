using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Ledgers;

namespace Assistant.Dialogue.Turns;

/// <summary>The running balance of a visit's cylinders, in one sentence each.</summary>
internal sealed class CylinderTeller(PhraseBook book)
{
    /// <summary>Each cylinder used: what it gave, took and holds, and last whether the weights follow from one another.</summary>
    public IEnumerable<Phrase> Tell(VisitState state)
    {
        var balances = state.Cylinders.Ledger(state.AssetId ?? "this visit").Balances();
        foreach (var cylinder in balances.Cylinders.Values)
        {
            var moved = new (string Key, Grams Mass)[]
            {
                ("cylinder.moved-charged", cylinder.Charged), ("cylinder.moved-recovered", cylinder.Recovered), ("cylinder.moved-lost", cylinder.HoseLoss),
                ("cylinder.moved-in", cylinder.TransferredIn), ("cylinder.moved-out", cylinder.TransferredOut),
            };
            var parts = moved.Where(m => m.Mass > Grams.Zero).Select(m => book.Say(m.Key, state.Units, ("mass", Mass(m.Mass, state))).Full);
            yield return book.Say("cylinder.account", state.Units, ("tag", cylinder.Tag), ("moved", string.Join(", ", parts)), ("left", Mass(cylinder.Remaining, state)));
        }

        if (!balances.Cylinders.IsEmpty)
        {
            if (balances.Gaps.IsEmpty)
            {
                yield return book.Say("cylinder.closes", state.Units);
            }

            foreach (var gap in balances.Gaps)
            {
                yield return book.Say(LedgerSentences.Of(gap), state.Units);
            }
        }
    }

    private static string Mass(Grams mass, VisitState state) => MassText.Written(mass, state.Units);
}
