using Assistant.Trade.Ledgers;
using static Assistant.Trade.Tests.Ledgers.LedgerScene;

namespace Assistant.Trade.Tests.Ledgers;

public class LedgerSentencesTests
{
    [Fact]
    public void A_refusal_names_the_cylinder_what_was_found_and_the_limit()
    {
        var says = LedgerSentences.Of(RefusalOf(Entry(Recovery, EntryPurpose.Recover, 12_000, 31_500))!);
        Assert.Equal("ledger.over-full", says.Key);
        Assert.Equal(["tag", "found", "limit"], says.Parts.Select(p => p.Name));
        Assert.Equal([null, 19.5, 19.008], says.Parts.Select(p => p.Amount?.Canonical));
    }

    [Theory]
    [InlineData(13_300, "ledger.gap-missing", 0.2)]
    [InlineData(13_501, "ledger.gap-surplus", 0.001)]
    public void A_gap_names_both_entries_and_the_size(long before, string key, double kilograms)
    {
        var balances = Taken(
            Entry(Supply, EntryPurpose.Charge, 15_000, 13_500),
            Entry(Supply, EntryPurpose.Charge, before, 13_000, minute: 60) with { By = "second" }).Balances();
        var says = LedgerSentences.Of(balances.Gaps.Single());
        Assert.Equal(key, says.Key);
        Assert.Equal(kilograms, says.Parts.Single(p => p.Name == "difference").Amount?.Canonical);
        Assert.Equal("2026-02-03 08:00", says.Parts.Single(p => p.Name == "earlier").Word);
        Assert.Equal("2026-02-03 09:00", says.Parts.Single(p => p.Name == "later").Word);
        Assert.Equal("second", says.Parts.Single(p => p.Name == "later_by").Word);
    }

    [Fact]
    public void A_mix_names_what_met_what()
    {
        var balances = Taken(
            Entry(Recovery, EntryPurpose.Recover, 12_000, 13_000),
            Entry(Recovery, EntryPurpose.Recover, 13_000, 13_500, minute: 1, refrigerant: "R404A")).Balances();
        var says = LedgerSentences.Of(balances.Mixes.Single());
        Assert.Equal("ledger.mixed", says.Key);
        Assert.Equal(["R1", "R404A", "R448A"], says.Parts.Select(p => p.Word));
    }

    [Fact]
    public void A_charge_from_a_cylinder_that_holds_another_refrigerant_says_so() =>
        Assert.Equal(
            "ledger.other-refrigerant",
            LedgerSentences.Of(Taken(Entry(Supply, EntryPurpose.Charge, 9_000, 8_000, refrigerant: "R404A")).Balances().Mixes.Single()).Key);
}
