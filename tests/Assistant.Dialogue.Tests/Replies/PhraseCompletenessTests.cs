using Assistant.Dialogue.Tests.Turns;
using Assistant.Trade;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Tests.Replies;

public sealed class PhraseCompletenessTests
{
    public static TheoryData<string> Keys =>
    [
        .. FactCatalogue.All.SelectMany(f => new[] { "fact." + f.Name, "ask." + f.Name }),
        .. Enum.GetValues<FaultCode>().SelectMany(f => new[] { "fault." + Codes.Of(f), "act." + Codes.Of(f) }),
        .. Enum.GetValues<CautionCode>().Select(c => "caution." + Codes.Of(c)),
    ];

    [Theory]
    [MemberData(nameof(Keys))]
    public void Every_fact_fault_and_caution_can_be_said(string key) => Assert.True(Conversation.Book.Has(key), $"no phrase {key}");

    [Fact]
    public void Every_fault_has_what_putting_it_right_needs() =>
        Assert.Equal(Enum.GetValues<FaultCode>().ToHashSet(), Conversation.Walk.Actions.Keys.ToHashSet());
}
