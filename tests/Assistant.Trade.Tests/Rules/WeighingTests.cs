using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;
using Assistant.Trade.Rules.Evidence;
using Assistant.Trade.Rules.Thresholds;

namespace Assistant.Trade.Tests.Rules;

/// <summary>One fault against what is read, with a rule of the test's own: drier drop over 2 K (scatter 0.5) as its proof, liquid line drop over 4 K, a flashing glass. A sound plant: a drop up to 1 K, up to 2.5 K, a clear glass.</summary>
public class WeighingTests
{
    private static readonly Expectation Drier = Expectation.AtLeast(Symptom.DrierDrop, new TemperatureDifference(2), new TemperatureDifference(0.5)).Proving();
    private static readonly Expectation Line = Expectation.AtLeast(Symptom.LiquidLineDrop, new TemperatureDifference(4), new TemperatureDifference(0.5));
    private static readonly Expectation Glass = Expectation.Sees(Symptom.SightGlass, new Weight(9), 1);

    private static readonly FaultRule Rule = new(FaultCode.LiquidLineRestriction, "", [], [], Drier, Line, Glass);

    private static FaultRule Hinted(Expectation expectation) => new(FaultCode.CompressorInefficient, "", [], [], expectation.Hinting());

    [Theory]
    [InlineData(1.0, true)]
    [InlineData(1.01, false)]
    public void Two_errors_out_is_a_contradiction(double drop, bool contradicted) => Assert.Equal(contradicted, Weighing.Of(Rule, Read((Symptom.DrierDrop, drop))).IsContradicted);

    [Theory]
    [InlineData(0.5, 0.0)]
    [InlineData(0.5, 5.0)]
    [InlineData(3.0, 0.0)]
    public void One_contradiction_is_not_made_good_by_another_or_by_a_sign_that_fits(double drier, double line) =>
        Assert.True(Weighing.Of(Rule, Read((Symptom.DrierDrop, drier), (Symptom.LiquidLineDrop, line))).IsContradicted);

    [Fact]
    public void The_misfit_is_the_sum_of_all_signs() => Assert.Equal(1 + 4 + 9, Weighing.Of(Rule, Read((Symptom.DrierDrop, 1.5), (Symptom.LiquidLineDrop, 3), (Symptom.SightGlass, 0))).Misfit, 9);

    [Fact]
    public void A_sign_nearly_an_error_out_still_supports_and_a_whole_error_does_not()
    {
        Assert.Equal(1, Weighing.Of(Rule, Read((Symptom.LiquidLineDrop, 3.51))).Support);
        Assert.Equal(0, Weighing.Of(Rule, Read((Symptom.LiquidLineDrop, 3.5))).Support);
    }

    [Theory]
    [InlineData(2.0, true)]
    [InlineData(1.9, false)]
    public void It_is_proven_by_its_proof_alone_and_only_inside_the_range(double drop, bool proven) => Assert.Equal(proven, Weighing.Of(Rule, Read((Symptom.DrierDrop, drop))).IsProven);

    // A drop over the drier fits the usual picture but for the flashing glass, 9; the other one, proven by the glass, has the drop against it, 25 at the most.
    [Fact]
    public void Another_picture_of_a_fault_though_proven_gives_way_to_the_one_that_fits_better()
    {
        var rule = new FaultRule(FaultCode.LiquidLineRestriction, "", [], [], Drier) { OtherWays = [new(FaultCode.LiquidLineRestriction, "", [], [], Glass.Proving())] };

        Assert.Equal(9, Weighing.Best(rule, Read((Symptom.DrierDrop, 3), (Symptom.SightGlass, 1))).Misfit, 9);
    }

    // 0.88 of the usual TD, or 1.25 of it: a hint only where the instruments could not make it what is expected.
    [Theory]
    [InlineData(0.85, 0.14, 1)]
    [InlineData(0.85, 0.16, 0)]
    public void A_small_share_hints_where_it_is_under_the_expected_beyond_error(double share, double error, int support) =>
        Assert.Equal(support, Weighing.Of(Hinted(Expectation.AtMost(Symptom.TdShare, new Share(0.88), new Share(0.1))), new SymptomTable { [Symptom.TdShare] = new(share, error) }).Support);

    [Theory]
    [InlineData(1.2, 0.19, 1)]
    [InlineData(1.2, 0.21, 0)]
    public void A_large_share_hints_where_it_is_over_it(double share, double error, int support) =>
        Assert.Equal(support, Weighing.Of(Hinted(Expectation.AtLeast(Symptom.TdShare, new Share(1.25), new Share(0.12))), new SymptomTable { [Symptom.TdShare] = new(share, error) }).Support);

    // Fans that all turn weigh a quarter of an error against a want of air, and are no sign of it.
    [Fact]
    public void A_thing_seen_otherwise_is_no_sign_however_little_it_weighs()
    {
        var fans = new FaultRule(FaultCode.EvaporatorAirflow, "", [], [], Expectation.Sees(Symptom.EvaporatorFans, new Weight(0.25), 1, 2).Proving());

        Assert.Equal((0, 0.25), (Weighing.Of(fans, Read((Symptom.EvaporatorFans, 0))).Support, Weighing.Of(fans, Read((Symptom.EvaporatorFans, 0))).Misfit));
        Assert.False(fans.Shows[0].Fits(new(0, 0)));
        Assert.True(fans.Shows[0].Fits(new(1, 0)));
        Assert.Equal((1, 0.0), (Weighing.Of(fans, Read((Symptom.EvaporatorFans, 1))).Support, Weighing.Of(fans, Read((Symptom.EvaporatorFans, 1))).Misfit));
    }

    [Fact]
    public void A_rule_without_a_proof_is_never_proven() =>
        Assert.False(Weighing.Of(new(FaultCode.LiquidLineRestriction, "", [], [], Line), Read((Symptom.LiquidLineDrop, 6))).IsProven);

    [Fact]
    public void A_proven_fault_explains_another_that_shows_nothing_more()
    {
        var table = Read((Symptom.DrierDrop, 3), (Symptom.SightGlass, 1));
        var other = Weighing.Of(new(FaultCode.Undercharge, "", [], [], Glass), table);

        Assert.True(Weighing.Of(Rule, table).Explains(other, table));
    }

    [Theory]
    [InlineData(1.5, 1.0)]
    [InlineData(3.0, 0.0)]
    public void Unproven_or_contradicted_it_explains_nothing(double drier, double line)
    {
        var table = Read((Symptom.DrierDrop, drier), (Symptom.LiquidLineDrop, line), (Symptom.SightGlass, 1));
        var other = Weighing.Of(new(FaultCode.Undercharge, "", [], [], Glass), table);

        Assert.False(Weighing.Of(Rule, table).Explains(other, table));
    }

    [Fact]
    public void A_sound_plant_is_never_explained_away()
    {
        var table = Read((Symptom.DrierDrop, 3));

        Assert.False(Weighing.Of(Rule, table).Explains(Weighing.Of(new(FaultCode.NoFault, "", [], []), table), table));
    }

    [Fact]
    public void A_sign_of_the_others_own_is_left_unexplained()
    {
        var hungry = Expectation.AtLeast(Symptom.TdShare, new Share(2), new Share(0.1));
        var table = Read((Symptom.DrierDrop, 3), (Symptom.TdShare, 2.5));
        var other = Weighing.Of(new(FaultCode.Undercharge, "", [], [], hungry), table);

        Assert.False(Weighing.Of(Rule, table).Explains(other, table));
    }

    [Fact]
    public void Another_picture_counts_only_where_its_own_proof_is_seen()
    {
        var way = new FaultRule(FaultCode.LiquidLineRestriction, "", [], [], Line.Proving());
        var rule = new FaultRule(FaultCode.LiquidLineRestriction, "", [], [], Drier, Glass) { OtherWays = [way] };

        Assert.Same(way, Weighing.Best(rule, Read((Symptom.LiquidLineDrop, 5))).Rule);
        Assert.Same(rule, Weighing.Best(rule, Read((Symptom.LiquidLineDrop, 3.5))).Rule);
        Assert.Same(rule, Weighing.Best(rule, Read((Symptom.DrierDrop, 3))).Rule);
    }

    [Fact]
    public void Of_two_pictures_the_better_fitting_one_stands_and_of_equals_the_usual_one_unless_the_other_is_proven()
    {
        var loose = Expectation.AtLeast(Symptom.LiquidLineDrop, new TemperatureDifference(4), new TemperatureDifference(5)).Proving();
        var way = new FaultRule(FaultCode.LiquidLineRestriction, "", [], [], loose);
        var rule = new FaultRule(FaultCode.LiquidLineRestriction, "", [], [], Drier, Line) { OtherWays = [way] };

        // Both are carried by the drier's proof or the line's; 3.9 K fits neither line quite.
        Assert.Same(way, Weighing.Best(rule, Read((Symptom.DrierDrop, 0.5), (Symptom.LiquidLineDrop, 3.9))).Rule);
        Assert.Same(rule, Weighing.Best(rule, Read((Symptom.DrierDrop, 3), (Symptom.LiquidLineDrop, 2.6), (Symptom.SightGlass, 0))).Rule);
        Assert.Same(way, Weighing.Best(rule, Read((Symptom.LiquidLineDrop, 5))).Rule);
    }

    [Theory]
    [InlineData(3, true)]
    [InlineData(1.51, true)]
    [InlineData(1.5, false)]
    public void A_proof_that_fits_is_a_reason_even_where_a_sound_plant_shows_the_same(double drop, bool reason)
    {
        var proof = Expectation.AtLeast(Symptom.TdShare, new Share(2), new Share(0.5)).Proving();

        Assert.Equal(reason, Weighing.Supports(new(FaultCode.Undercharge, "", [], [], proof), proof, new(drop, 0)));
    }

    [Fact]
    public void What_a_fault_does_not_name_is_no_reason_for_it() =>
        Assert.False(Weighing.Supports(new(FaultCode.Undercharge, "", [], [], Glass), Drier, new(5, 0)));

    [Theory]
    [InlineData(2.9, true)]
    [InlineData(1.0, false)]
    public void For_a_sound_plant_every_number_in_its_place_speaks(double drop, bool reason) =>
        Assert.Equal(reason, Weighing.Supports(new(FaultCode.NoFault, "", [], []), Line, new(drop + 1, 0)));

    private static SymptomTable Read(params (object Symptom, double Value)[] readings)
    {
        var table = new SymptomTable();
        foreach (var (symptom, value) in readings)
        {
            table[(Symptom)symptom] = new(value, 0);
        }

        return table;
    }
}
