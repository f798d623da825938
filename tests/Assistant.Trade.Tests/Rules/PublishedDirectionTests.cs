using Assistant.Trade.Rules;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Tests.Rules;

/// <summary>
/// A second opinion: the directions of Rossi and Braun 1997, HVAC&amp;R Research 3(1), fault diagnosis rules for a fixed-orifice air
/// conditioner. Each place where a plant with an expansion valve, a receiver and a head pressure control departs is named with its cause.
/// </summary>
public class PublishedDirectionTests
{
    private const string Superheat = "superheat-excess";
    private const string Subcooling = "subcooling";
    private const string Condensing = "head-excess";

    [Theory]
    [InlineData(FaultCode.Undercharge, Superheat, '+')]
    [InlineData(FaultCode.Undercharge, Subcooling, '-')]
    [InlineData(FaultCode.CompressorInefficient, Condensing, '-')]
    [InlineData(FaultCode.LiquidLineRestriction, Superheat, '+')]
    [InlineData(FaultCode.CondenserAirflow, Condensing, '+')]
    public void A_rule_points_where_the_published_rules_point(FaultCode fault, string symptom, char direction)
    {
        var sign = SignOf(fault, symptom);

        Assert.NotNull(sign);
        if (direction == '+')
        {
            Assert.True(double.IsFinite(sign.Value.Low));
            Assert.Equal(double.PositiveInfinity, sign.Value.High);
        }
        else
        {
            Assert.True(double.IsFinite(sign.Value.High));
            Assert.Equal(double.NegativeInfinity, sign.Value.Low);
        }
    }

    [Theory]
    [InlineData(FaultCode.Undercharge, Condensing, '-', "the head pressure control holds the head until the liquid runs out: anything up to the usual is allowed")]
    [InlineData(FaultCode.CompressorInefficient, Superheat, '-', "the valve closes to hold the superheat: it may be usual or a little low")]
    [InlineData(FaultCode.CompressorInefficient, Subcooling, '-', "the receiver drains the condenser: the subcooling stays as it is")]
    [InlineData(FaultCode.LiquidLineRestriction, Subcooling, '+', "the receiver takes up the liquid that is held back: the subcooling stays as it is")]
    [InlineData(FaultCode.LiquidLineRestriction, Condensing, '+', "the starved plant rejects less heat, and the receiver takes the liquid: the head is usual to low")]
    [InlineData(FaultCode.CondenserAirflow, Superheat, '-', "the valve holds the superheat")]
    [InlineData(FaultCode.CondenserAirflow, Subcooling, '-', "the receiver flattens the subcooling: it stays usual")]
    [InlineData(FaultCode.EvaporatorAirflow, Superheat, '-', "the valve closes with the load: usual or a little low")]
    [InlineData(FaultCode.EvaporatorAirflow, Condensing, '-', "a head that is held does not fall")]
    public void Where_this_kind_of_plant_departs_the_published_direction_is_at_least_not_turned_round(FaultCode fault, string symptom, char published, string cause)
    {
        var sign = SignOf(fault, symptom);
        Assert.NotEmpty(cause);

        // One-sided the other way would be a contradiction; no word on it, or a range to both sides, is the departure.
        Assert.True(sign is null || (published == '+' ? sign is not { Low: double.NegativeInfinity, High: < 0 } : sign is not { Low: > 0, High: double.PositiveInfinity }));
    }

    [Theory]
    [InlineData(FaultCode.Noncondensables, "standing-excess", "high-side standing test")]
    [InlineData(FaultCode.LiquidLineRestriction, "drier-drop", "3 degF over the drier")]
    [InlineData(FaultCode.CoilIced, "coil-ice", "ice is seen")]
    [InlineData(FaultCode.Undercharge, "sight-glass", "bubbles are seen")]
    public void A_fault_is_established_only_by_its_own_test(FaultCode fault, string symptom, string test)
    {
        Assert.NotEmpty(test);
        Assert.True(SignOf(fault, symptom)!.Value.IsProof);
    }

    [Fact]
    public void Every_fault_has_a_rule_with_a_source_a_test_and_signs()
    {
        foreach (var code in Enum.GetValues<FaultCode>().Where(c => c != FaultCode.NotEnoughEvidence))
        {
            var rule = FaultRules.Of(code);
            Assert.Equal(code, rule.Code);
            Assert.NotEmpty(rule.Source);
            Assert.NotEmpty(rule.Test);
            Assert.NotEmpty(rule.Shows);
        }
    }

    private static Expectation? SignOf(FaultCode fault, string symptom) =>
        FaultRules.Of(fault).Shows.Where(s => Codes.KebabOf(s.Symptom.ToString()) == symptom).Select(s => (Expectation?)s).FirstOrDefault();
}
