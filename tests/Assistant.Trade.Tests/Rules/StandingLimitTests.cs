using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;
using Assistant.Trade.Rules.Derivation;
using Assistant.Trade.Rules.Evidence;
using Assistant.Trade.Rules.Plausibility;

namespace Assistant.Trade.Tests.Rules;

/// <summary>Where one standing ends and the next begins, in squared errors: likely two errors before the next fault, established three; out from 12 where another fits 6 better, or beyond 40.</summary>
public class StandingLimitTests
{
    [Theory]
    [InlineData(3.99, Standing.Possible)]
    [InlineData(4, Standing.Likely)]
    [InlineData(8.99, Standing.Likely)]
    [InlineData(9, Standing.Established)]
    [InlineData(30, Standing.Established)]
    public void The_first_stands_by_how_much_worse_the_next_fits(double margin, Standing standing)
    {
        // Ten kelvins of subcooling are a sign of the next that the first does not explain.
        var table = new SymptomTable { [Symptom.Subcooling] = new(10, 0) };

        Assert.Equal(standing, Of([Fits(FaultCode.Undercharge, 0), Fits(FaultCode.Overcharge, margin)], table: table)[0].Standing);
        Assert.Equal(standing, Of([Fits(FaultCode.Undercharge, 2), Fits(FaultCode.Overcharge, margin + 2)], table: table)[0].Standing);
        Assert.Equal(standing == Standing.Established, Verdict.WouldEstablish([Fits(FaultCode.Undercharge, 2), Fits(FaultCode.Overcharge, margin + 2)], table));
    }

    [Fact]
    public void Without_its_proof_it_is_likely_at_most() => Assert.Equal(Standing.Likely, First([Fits(FaultCode.Undercharge, 0) with { IsProven = false }]).Standing);

    [Fact]
    public void With_a_reading_against_it_it_is_likely_at_most() => Assert.Equal(Standing.Likely, First([Fits(FaultCode.Undercharge, 5) with { IsContradicted = true }]).Standing);

    [Fact]
    public void Showing_nothing_a_sound_plant_would_not_it_is_possible_at_most() => Assert.Equal(Standing.Possible, First([Fits(FaultCode.Undercharge, 0) with { IsOtherThanSound = false }]).Standing);

    [Fact]
    public void A_sound_plant_needs_no_sign_of_its_own() => Assert.Equal(Standing.Established, First([Fits(FaultCode.NoFault, 0) with { IsOtherThanSound = false }]).Standing);

    [Fact]
    public void Beside_a_sound_plant_a_fault_without_a_sign_is_no_rival()
    {
        Assert.Equal(Standing.Established, First([Fits(FaultCode.NoFault, 0), Fits(FaultCode.Overcharge, 1) with { IsOtherThanSound = false }]).Standing);
        Assert.Equal(Standing.Possible, First([Fits(FaultCode.NoFault, 0), Fits(FaultCode.Overcharge, 1)]).Standing);
    }

    // The rules' own signs are none here, so the proven fault explains the other: only within an error of it does the other remain a rival.
    [Theory]
    [InlineData(0.99, Standing.Possible)]
    [InlineData(1, Standing.Established)]
    public void A_fault_that_the_proven_one_explains_is_a_rival_only_within_an_error(double margin, Standing standing) =>
        Assert.Equal(standing, First([Fits(FaultCode.Undercharge, 3), Fits(FaultCode.Overcharge, 3 + margin) with { Rule = Bare(FaultCode.Overcharge) }]).Standing);

    [Theory]
    [InlineData(6, 11.99, false)]
    [InlineData(6, 12, true)]
    [InlineData(6.1, 12, false)]
    [InlineData(34, 40, true)]
    [InlineData(35, 40, false)]
    [InlineData(35, 40.01, true)]
    public void A_fault_is_out_when_it_fits_badly_and_another_clearly_better(double best, double misfit, bool isOut)
    {
        var findings = Of([Fits(FaultCode.Undercharge, best), Fits(FaultCode.Overcharge, misfit)]);

        Assert.Equal(isOut ? Standing.RuledOut : Standing.Possible, findings.Single(f => f.Code == FaultCode.Overcharge).Standing);
    }

    [Fact]
    public void Where_even_the_best_is_hopeless_there_is_not_enough_evidence() =>
        Assert.Equal(FaultCode.NotEnoughEvidence, Assert.Single(Of([Fits(FaultCode.Undercharge, 41), Fits(FaultCode.Overcharge, 42)])).Code);

    [Fact]
    public void Of_nothing_nothing_is_established()
    {
        Assert.False(Verdict.WouldEstablish([], new SymptomTable()));
        Assert.Equal(FaultCode.NotEnoughEvidence, Assert.Single(Of([])).Code);
    }

    [Fact]
    public void A_doubted_reading_takes_established_down_to_likely_and_a_doubted_verdict_to_possible()
    {
        Assert.Equal(Standing.Likely, Of([Fits(FaultCode.Undercharge, 0)], Doubt.OfAReading)[0].Standing);

        var findings = Of([Fits(FaultCode.Undercharge, 0)], Doubt.OfTheVerdict);
        Assert.Equal([(FaultCode.NotEnoughEvidence, Standing.Possible), (FaultCode.Undercharge, Standing.Possible)], findings.Select(f => (f.Code, f.Standing)));
        Assert.Equal("reason.readings-questioned", Assert.Single(findings[0].Because).Key);
        Assert.Equal(FaultCode.NotEnoughEvidence, Assert.Single(Of([], Doubt.OfTheVerdict)).Code);
    }

    [Theory]
    [InlineData("reason.outside-transcritical", FaultCode.Undercharge, Standing.Likely, 1)]
    [InlineData("reason.outside-no-table", FaultCode.CoilIced, Standing.Established, 1)]
    [InlineData("reason.outside-electronic-valve", FaultCode.CondenserAirflow, Standing.Established, 0)]
    [InlineData("reason.outside-electronic-valve", FaultCode.ExpansionValveStarving, Standing.Likely, 1)]
    [InlineData("reason.outside-electronic-valve", FaultCode.ExpansionValveOverfeeding, Standing.Likely, 1)]
    public void What_lies_outside_is_said_and_holds_back_what_it_touches(string outside, FaultCode fault, Standing standing, int against)
    {
        var first = Of([Fits(fault, 0)], outside: outside)[0];

        Assert.Equal((standing, against), (first.Standing, first.Against.Count(r => r.Key == outside)));
    }

    [Theory]
    [InlineData("reason.outside-no-table")]
    [InlineData("reason.outside-transcritical")]
    public void Where_nothing_is_shown_what_lies_outside_is_why(string outside)
    {
        var first = Assert.Single(Of([], outside: outside));

        Assert.Equal(outside, Assert.Single(first.Because).Key);
        Assert.Empty(first.Against);
    }

    private static Finding First(Weighing[] ranking) => Of(ranking)[0];

    private static ImmutableArray<Finding> Of(Weighing[] ranking, Doubt doubt = Doubt.None, string? outside = null, SymptomTable? table = null) =>
        Verdict.Of(new PlantState(FactSet.Empty), table ?? new SymptomTable(), ranking, doubt, outside is null ? null : new Reason(outside));

    // Proven, with a sign a sound plant does not show, and nothing against it: only the misfit differs.
    private static Weighing Fits(FaultCode fault, double misfit) => new(FaultRules.Of(fault), misfit, 1, true, true, false);

    private static FaultRule Bare(FaultCode fault) => new(fault, "", [], []);
}
