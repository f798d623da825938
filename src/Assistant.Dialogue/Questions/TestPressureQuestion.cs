using Assistant.Trade.Facts;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Questions;

/// <summary>
/// "What do I pressurize it to": never above the low side's design pressure on the nameplate (ASHRAE 15, EN 378-2, from memory),
/// and enough to show a leak.
/// </summary>
internal static class TestPressureQuestion
{
    public static Answer Answer(Asked asked)
    {
        var how = asked.Say("answer.test-pressure.how");
        return asked.Pressure(FactCatalogue.LowSideDesignPressure) is { } limit
            ? Asked.Because(asked.Say("answer.test-pressure.limit", ("limit", asked.Gauge(limit)), ("least", LeakSearch.LeastPressure)), how)
            : Asked.Because(asked.Say("answer.test-pressure.no-limit", ("least", LeakSearch.LeastPressure)), how);
    }
}
