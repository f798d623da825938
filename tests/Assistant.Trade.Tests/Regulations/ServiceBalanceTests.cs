using Assistant.Trade.Ledgers;
using Assistant.Trade.Regulations;
using UnitsNet;
using static Assistant.Trade.Tests.Ledgers.LedgerScene;
using static Assistant.Trade.Tests.Regulations.RegulationScene;

namespace Assistant.Trade.Tests.Regulations;

public class ServiceBalanceTests
{
    // 3 000 g out for the repair, 3 000 g and 450 g back: 450 g were missing.
    [Fact]
    public void What_was_recovered_and_put_back_is_not_leaked() =>
        Assert.Equal(
            new RefrigerantAdded(Day("2026-02-03"), Mass.FromGrams(450)),
            ServiceBalance.Of(
                "rack",
                [
                    Entry(Recovery, EntryPurpose.Recover, 12_000, 15_000),
                    Entry(Recovery, EntryPurpose.Charge, 15_000, 12_000, minute: 60),
                    Entry(Supply, EntryPurpose.Charge, 9_000, 8_550, minute: 70),
                    Entry(Supply, EntryPurpose.HoseLoss, 8_550, 8_540, minute: 71),
                    Entry(Supply, EntryPurpose.Charge, 8_540, 7_000, minute: 80, asset: "walk-in"),
                ],
                AdditionReason.TopUp));

    [Theory]
    [InlineData(AdditionReason.Seasonal, true)]
    [InlineData(AdditionReason.TopUp, false)]
    public void What_came_out_on_balance_is_removed_for_the_season_only_where_it_is_said(AdditionReason reason, bool seasonal) =>
        Assert.Equal(
            new RefrigerantRemoved(Day("2026-02-03"), Mass.FromGrams(3_000), seasonal),
            ServiceBalance.Of("rack", [Entry(Recovery, EntryPurpose.Recover, 12_000, 15_000)], reason));

    [Fact]
    public void A_service_over_two_days_is_dated_on_its_last_day_where_it_was_done()
    {
        var late = Entry(Supply, EntryPurpose.Charge, 9_000, 8_000) with { At = new DateTimeOffset(2026, 2, 4, 23, 30, 0, TimeSpan.FromHours(-7)) };
        Assert.Equal(Day("2026-02-04"), ServiceBalance.Of("rack", [late, Entry(Recovery, EntryPurpose.Recover, 12_000, 12_100)], AdditionReason.TopUp)?.On);
    }

    [Fact]
    public void Nothing_on_balance_is_no_event()
    {
        Assert.Null(ServiceBalance.Of("rack", [], AdditionReason.TopUp));
        Assert.Null(ServiceBalance.Of("rack", [Entry(Recovery, EntryPurpose.Recover, 12_000, 13_000), Entry(Recovery, EntryPurpose.Charge, 13_000, 12_000, minute: 9)], AdditionReason.TopUp));
    }
}
