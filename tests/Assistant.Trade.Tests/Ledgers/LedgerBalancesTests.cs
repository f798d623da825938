using Assistant.Trade.Ledgers;
using static Assistant.Trade.Tests.Ledgers.LedgerScene;

namespace Assistant.Trade.Tests.Ledgers;

public class LedgerBalancesTests
{
    // An invented day, summed by hand: 10 000 g in the cylinder, 1 500 and 2 000 charged, 20 lost from hoses, 500 moved over.
    [Fact]
    public void A_day_closes_to_the_gram()
    {
        var balances = Taken(
            Entry(Supply, EntryPurpose.Charge, 15_000, 13_500, minute: 0),
            Entry(Supply, EntryPurpose.HoseLoss, 13_500, 13_480, minute: 5),
            Entry(Supply, EntryPurpose.Charge, 13_480, 11_480, minute: 10, asset: "walk-in"),
            Entry(Supply, EntryPurpose.Transfer, 11_480, 10_980, minute: 20, asset: null),
            Entry(Recovery, EntryPurpose.Transfer, 12_000, 12_495, minute: 20, asset: null),
            Entry(Recovery, EntryPurpose.Recover, 12_495, 15_495, minute: 30)).Balances();

        Assert.True(balances.Closes);
        var supply = balances.Cylinders["S1"];
        Assert.Equal(new Grams(10_000), supply.Opening);
        Assert.Equal(new Grams(3_500), supply.Charged);
        Assert.Equal(new Grams(20), supply.HoseLoss);
        Assert.Equal(new Grams(500), supply.TransferredOut);
        Assert.Equal(new Grams(5_980), supply.Remaining);
        var recovery = balances.Cylinders["R1"];
        Assert.Equal(new Grams(495), recovery.TransferredIn);
        Assert.Equal(new Grams(3_000), recovery.Recovered);
        Assert.Equal(new Grams(3_495), recovery.Remaining);
        Assert.Equal(new Grams(5), balances.TransferLoss);
        Assert.Equal(new AssetBalance("rack", new Grams(1_500), new Grams(3_000)), balances.Assets["rack"]);
        Assert.Equal(new Grams(-1_500), balances.Assets["rack"].Net);
        Assert.Equal(new AssetBalance("walk-in", new Grams(2_000), Grams.Zero), balances.Assets["walk-in"]);
    }

    [Theory]
    [InlineData(13_300, -200)]
    [InlineData(13_501, 1)]
    public void A_weight_that_does_not_follow_names_the_two_entries_and_the_difference(long before, long difference)
    {
        var first = Entry(Supply, EntryPurpose.Charge, 15_000, 13_500, minute: 0);
        var second = Entry(Supply, EntryPurpose.Charge, before, 13_000, minute: 60);
        var balances = Taken(second, first).Balances();
        Assert.Equal([new LedgerGap("S1", first, second, new Grams(difference))], balances.Gaps.AsEnumerable());
        Assert.Equal(new Grams(difference), balances.Cylinders["S1"].Unexplained);
        Assert.False(balances.Closes);
    }

    [Fact]
    public void A_transfer_that_gains_mass_does_not_close()
    {
        var balances = Taken(
            Entry(Supply, EntryPurpose.Transfer, 11_000, 10_000, asset: null),
            Entry(Recovery, EntryPurpose.Transfer, 12_000, 13_001, asset: null)).Balances();
        Assert.Equal(new Grams(-1), balances.TransferLoss);
        Assert.False(balances.Closes);
    }

    [Fact]
    public void Two_refrigerants_in_one_recovery_cylinder_are_flagged()
    {
        var second = Entry(Recovery, EntryPurpose.Recover, 13_000, 13_500, minute: 1, refrigerant: "R404A");
        var balances = Taken(Entry(Recovery, EntryPurpose.Recover, 12_000, 13_000), second).Balances();
        var mix = Assert.Single(balances.Mixes);
        Assert.Equal(second, mix.Entry);
        Assert.Equal(["R448A"], mix.Present);
        Assert.Equal(["R404A", "R448A"], balances.Cylinders["R1"].Refrigerants);
    }

    [Fact]
    public void A_cylinder_emptied_between_two_refrigerants_is_not_a_mix()
    {
        var balances = Taken(
            Entry(Recovery, EntryPurpose.Recover, 12_000, 13_000),
            Entry(Recovery, EntryPurpose.Transfer, 13_000, 12_000, minute: 1, asset: null),
            Entry(Recovery, EntryPurpose.Recover, 12_000, 12_500, minute: 2, refrigerant: "R404A")).Balances();
        Assert.Empty(balances.Mixes);
        Assert.Equal(["R404A"], balances.Cylinders["R1"].Refrigerants);
    }

    [Fact]
    public void A_charge_from_a_cylinder_labelled_otherwise_is_flagged() =>
        Assert.Single(Taken(Entry(Supply, EntryPurpose.Charge, 9_000, 8_000, refrigerant: "R404A")).Balances().Mixes);

    [Fact]
    public void Entries_of_the_same_minute_are_put_in_the_order_their_weights_tell()
    {
        var down = Entry(Supply, EntryPurpose.Charge, 9_000, 8_000);
        var up = Entry(Supply, EntryPurpose.Recover, 8_000, 8_400);
        var loss = Entry(Supply, EntryPurpose.HoseLoss, 8_400, 8_390);
        var balances = Taken(loss, up, down).Balances();
        Assert.True(balances.Closes);
        Assert.Equal(new Grams(4_000), balances.Cylinders["S1"].Opening);
        Assert.Equal(new Grams(3_390), balances.Cylinders["S1"].Remaining);
    }

    // Out and back in the same minute: only the next weight tells that the scale began, and ended, at 8 000.
    [Fact]
    public void A_minute_that_ends_where_it_began_is_settled_by_what_follows()
    {
        var balances = Taken(
            Entry(Supply, EntryPurpose.Charge, 9_000, 8_000),
            Entry(Supply, EntryPurpose.Recover, 8_000, 9_000),
            Entry(Supply, EntryPurpose.Charge, 8_000, 7_000, minute: 1)).Balances();
        Assert.True(balances.Closes);
        Assert.Equal(new Grams(3_000), balances.Cylinders["S1"].Opening);
    }

    [Fact]
    public void An_empty_ledger_closes_over_nothing()
    {
        var balances = House.Balances();
        Assert.True(balances.Closes);
        Assert.Empty(balances.Cylinders);
    }
}
