using Assistant.Dialogue.Files;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Tests.Understanding;
using Assistant.Trade;
using Assistant.Trade.Cautions;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Tests.CaseRuns;

public class ReasonPhraseTests
{
    private static readonly PhraseBook Phrases = PhraseBook.Load(
        Directory.GetFiles(Path.Combine(LexiconFiles.Root, "dialogs", "phrases"), "*.yaml").Order(StringComparer.Ordinal).Select(p => new DialogFile(p, File.ReadAllText(p))));

    [Fact]
    public void Every_reason_of_every_case_can_be_said_in_both_units()
    {
        foreach (var assessment in CaseFile.Cases.Select(c => Assessor.Assess(c.Facts)))
        {
            foreach (var reason in assessment.Findings.SelectMany(f => f.Because.Concat(f.Against)).Concat(assessment.Rejected.Select(r => r.Why)))
            {
                Assert.DoesNotContain("{", Phrases.Say(reason, UnitSystem.Us).Full, StringComparison.Ordinal);
                Assert.NotEmpty(Phrases.Say(reason, UnitSystem.Metric).Brief);
            }
        }
    }

    [Fact]
    public void Every_reason_the_rules_can_give_has_its_sentence() =>
        Assert.All(RuleReasons.Keys, k => Assert.True(Phrases.Has(k), k));

    [Fact]
    public void Every_caution_has_a_full_and_a_brief_text() =>
        Assert.All(Enum.GetValues<CautionCode>(), c => Assert.True(Phrases.Has("caution." + Codes.Of(c)), Codes.Of(c)));

    [Theory]
    [InlineData(CautionCode.IceRemoval, "never chipped")]
    [InlineData(CautionCode.LiquidToSuction, "throttled")]
    [InlineData(CautionCode.Ammonia, "specialist")]
    [InlineData(CautionCode.CylinderHeating, "125 °F")]
    [InlineData(CautionCode.FoodSafety, "41 °F")]
    [InlineData(CautionCode.Emergency, "emergency number")]
    public void A_caution_says_what_matters(CautionCode caution, string wanted) =>
        Assert.Contains(wanted, Phrases.Say("caution." + Codes.Of(caution), UnitSystem.Us).Full, StringComparison.OrdinalIgnoreCase);
}
