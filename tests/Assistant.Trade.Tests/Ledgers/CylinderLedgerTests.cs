using Assistant.Trade.Ledgers;
using static Assistant.Trade.Tests.Ledgers.LedgerScene;

namespace Assistant.Trade.Tests.Ledgers;

public class CylinderLedgerTests
{
    [Fact]
    public void A_recovery_to_the_limit_is_taken_and_a_gram_more_is_refused_with_the_limit()
    {
        Assert.Null(RefusalOf(Entry(Recovery, EntryPurpose.Recover, 12_000, 12_000 + 19_008)));
        var refusal = RefusalOf(Entry(Recovery, EntryPurpose.Recover, 12_000, 12_000 + 19_009));
        Assert.Equal(RefusalReason.OverFull, refusal?.Reason);
        Assert.Equal(new Grams(19_009), refusal?.Found);
        Assert.Equal(new Grams(19_008), refusal?.Limit);
    }

    [Fact]
    public void A_fill_is_answered_with_its_limit_or_with_none_where_it_could_not_be_judged()
    {
        Assert.Equal(new Grams(19_008), House.Admit(Entry(Recovery, EntryPurpose.Recover, 12_000, 13_000), Density).FillLimit);
        Assert.Null(House.Admit(Entry(Recovery, EntryPurpose.Recover, 12_000, 13_000, refrigerant: "R999"), Density).FillLimit);
        Assert.Null(House.Admit(Entry(Recovery, EntryPurpose.Charge, 13_000, 12_000), Density).FillLimit);
    }

    // A label with the lighter liquid decides: 0.8 · 21 600 · 1.04 = 17 971.2 g, by hand.
    [Fact]
    public void The_lighter_liquid_of_label_and_recovery_sets_the_limit() =>
        Assert.Equal(new Grams(17_971), CylinderLedger.MaximumContents(Recovery with { Refrigerant = "R404A" }, "R448A", Density));

    [Fact]
    public void Without_a_water_capacity_or_a_density_there_is_no_limit_to_name()
    {
        Assert.Null(CylinderLedger.MaximumContents(Recovery with { WaterCapacity = null }, "R448A", Density));
        Assert.Null(CylinderLedger.MaximumContents(Recovery, "R999", Density));
    }

    [Fact]
    public void A_transfer_into_a_cylinder_is_held_to_the_same_limit() =>
        Assert.Equal(RefusalReason.OverFull, RefusalOf(Entry(Recovery, EntryPurpose.Transfer, 12_000, 31_009, asset: null))?.Reason);

    [Fact]
    public void Taking_out_of_an_overfull_cylinder_is_never_refused() =>
        Assert.Null(RefusalOf(Entry(Recovery, EntryPurpose.Transfer, 33_000, 32_000, asset: null)));

    [Theory]
    [InlineData(EntryPurpose.Charge, 6_000, 4_999)]
    [InlineData(EntryPurpose.Recover, 4_999, 6_000)]
    [InlineData(EntryPurpose.HoseLoss, 5_000, 4_999)]
    public void Contents_are_never_negative(EntryPurpose purpose, long before, long after)
    {
        var refusal = RefusalOf(Entry(Supply, purpose, before, after));
        Assert.Equal(RefusalReason.NegativeContents, refusal?.Reason);
        Assert.Equal(new Grams(4_999), refusal?.Found);
        Assert.Equal(new Grams(5_000), refusal?.Limit);
    }

    [Fact]
    public void An_empty_cylinder_is_not_negative() =>
        Assert.Null(RefusalOf(Entry(Supply, EntryPurpose.Charge, 6_000, 5_000)));

    [Theory]
    [InlineData(EntryPurpose.Charge, 6_000, 6_001)]
    [InlineData(EntryPurpose.HoseLoss, 6_000, 6_001)]
    [InlineData(EntryPurpose.Recover, 6_001, 6_000)]
    public void A_scale_that_moved_against_the_purpose_is_refused(EntryPurpose purpose, long before, long after) =>
        Assert.Equal(RefusalReason.WrongDirection, RefusalOf(Entry(Supply, purpose, before, after))?.Reason);

    [Theory]
    [InlineData(EntryPurpose.Charge)]
    [InlineData(EntryPurpose.Recover)]
    public void Charge_and_recovery_name_their_asset(EntryPurpose purpose) =>
        Assert.Equal(RefusalReason.AssetMissing, RefusalOf(Entry(Supply, purpose, 6_000, 6_000, asset: " "))?.Reason);

    [Fact]
    public void A_hose_loss_needs_no_asset() =>
        Assert.Null(RefusalOf(Entry(Supply, EntryPurpose.HoseLoss, 6_000, 5_990, asset: null)));

    [Fact]
    public void A_cylinder_nobody_knows_is_refused() =>
        Assert.Equal(RefusalReason.UnknownCylinder, RefusalOf(Entry(Supply, EntryPurpose.Charge, 6_000, 5_500) with { Tag = "S9" })?.Reason);

    [Fact]
    public void A_tag_is_read_without_regard_to_case()
    {
        var balances = Taken(
            Entry(Supply, EntryPurpose.Charge, 9_000, 8_000) with { Tag = "s1" },
            Entry(Supply, EntryPurpose.Charge, 8_000, 7_000, minute: 1)).Balances();
        Assert.Equal(new Grams(2_000), balances.Cylinders["S1"].Charged);
    }

    [Fact]
    public void A_tare_that_is_not_the_cylinders_is_refused_with_the_right_one()
    {
        var refusal = RefusalOf(Entry(Supply, EntryPurpose.Charge, 6_000, 5_500) with { Tare = new Grams(5_100) });
        Assert.Equal(RefusalReason.TareDiffers, refusal?.Reason);
        Assert.Equal(new Grams(5_000), refusal?.Limit);
    }

    [Fact]
    public void A_label_may_be_corrected_later_but_not_the_tare_that_entries_stand_on()
    {
        var ledger = Taken(Entry(Supply, EntryPurpose.Charge, 6_000, 5_500));
        Assert.Equal("R404A", ledger.With(Supply with { Refrigerant = "R404A" }).Cylinders["S1"].Refrigerant);
        Assert.Throws<ArgumentException>(() => ledger.With(Supply with { Tare = new Grams(5_100) }));
    }

    [Fact]
    public void The_same_entry_heard_twice_counts_once()
    {
        var entry = Entry(Supply, EntryPurpose.Charge, 6_000, 5_500);
        Assert.Equal(new Grams(500), Taken(entry, entry).Balances().Assets["rack"].Charged);
    }

    [Fact]
    public void Another_entry_under_a_taken_id_is_refused()
    {
        var entry = Entry(Supply, EntryPurpose.Charge, 6_000, 5_500);
        var admission = Taken(entry).Admit(entry with { GrossAfter = new Grams(5_400) }, Density);
        Assert.Equal(RefusalReason.IdTaken, admission.Refusal?.Reason);
        Assert.True(admission.IsRefused);
        Assert.Equal(new Grams(500), admission.Ledger.Balances().Assets["rack"].Charged);
    }
}
