using Assistant.Trade;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Tests.CaseRuns;

/// <summary>Cases a foreman wrote by hand without having seen the rules.</summary>
public sealed class HandCaseTests
{
    [Fact]
    public void Nineteen_of_twenty_are_named_first()
    {
        var missed = CaseFile.Hand.Where(c => !c.Is(Codes.Of(Assessor.Assess(c.Facts).Findings.First(f => f.Standing != Standing.RuledOut).Code))).Select(c => c.Id).ToList();

        Assert.Equal(168, CaseFile.Hand.Count);
        Assert.True(missed.Count <= 8, string.Join(", ", missed));
    }

    [Fact]
    public void The_later_sets_with_fewer_facts_are_named_first_as_well()
    {
        var missed = CaseFile.HandAgain.Where(c => !c.Is(Codes.Of(Assessor.Assess(c.Facts).Findings.First(f => f.Standing != Standing.RuledOut).Code))).Select(c => c.Id).ToList();

        Assert.Equal(178, CaseFile.HandAgain.Count);
        Assert.True(missed.Count <= 6, string.Join(", ", missed));
    }

    [Fact]
    public void Nothing_false_is_established()
    {
        var wrong = CaseFile.Hand.Concat(CaseFile.HandAgain).SelectMany(c => Assessor.Assess(c.Facts).Findings.Where(f => f.Standing == Standing.Established && !c.Is(Codes.Of(f.Code))).Select(f => $"{c.Id}: {f.Code}"));

        Assert.Empty(wrong);
    }
}
