using Assistant.Trade.Rules;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Tests.Rules;

/// <summary>Which faults are weighed at all, and when a sound plant stands before them.</summary>
public class RankingTests
{
    // All four where a sound plant has them, in K and as a share.
    private static readonly (string Symptom, double Value)[] Sound =
    [
        (nameof(Symptom.SuperheatExcess), 0), (nameof(Symptom.Subcooling), 3), (nameof(Symptom.HeadExcess), 0), (nameof(Symptom.TdShare), 1),
    ];

    [Theory]
    [InlineData(nameof(Symptom.SuperheatExcess), true)]
    [InlineData(nameof(Symptom.Subcooling), true)]
    [InlineData(nameof(Symptom.HeadExcess), true)]
    [InlineData(nameof(Symptom.TdShare), true)]
    [InlineData(null, true)]
    public void Three_of_the_four_numbers_judge_a_sound_plant(string? missing, bool judged) => Assert.Equal(judged, HasSound([.. Sound.Where(s => s.Symptom != missing)]));

    [Theory]
    [InlineData(nameof(Symptom.SuperheatExcess), nameof(Symptom.Subcooling))]
    [InlineData(nameof(Symptom.SuperheatExcess), nameof(Symptom.HeadExcess))]
    [InlineData(nameof(Symptom.SuperheatExcess), nameof(Symptom.TdShare))]
    [InlineData(nameof(Symptom.Subcooling), nameof(Symptom.HeadExcess))]
    [InlineData(nameof(Symptom.Subcooling), nameof(Symptom.TdShare))]
    [InlineData(nameof(Symptom.HeadExcess), nameof(Symptom.TdShare))]
    public void Two_of_them_do_not(string one, string other) => Assert.False(HasSound([.. Sound.Where(s => s.Symptom == one || s.Symptom == other)]));

    [Fact]
    public void The_glass_speaks_of_the_liquid_as_the_subcooling_does()
    {
        Assert.True(HasSound([.. Sound.Where(s => s.Symptom is not nameof(Symptom.Subcooling) and not nameof(Symptom.TdShare)), (nameof(Symptom.SightGlass), 0)]));
        Assert.False(HasSound([.. Sound.Where(s => s.Symptom is nameof(Symptom.Subcooling) or nameof(Symptom.TdShare)), (nameof(Symptom.SightGlass), 0)]));
    }

    // Nothing calls: a second witness of the room's temperature tells whether the control rightly rests.
    [Theory]
    [InlineData(1, nameof(Symptom.ThermometerGap), true)]
    [InlineData(1, nameof(Symptom.ProductOverBox), true)]
    [InlineData(1, nameof(Symptom.Door), false)]
    [InlineData(0, nameof(Symptom.ThermometerGap), false)]
    public void Without_a_call_a_second_thermometer_or_the_goods_judge_the_resting_plant(double call, string second, bool judged) =>
        Assert.Equal(judged, HasSound([(nameof(Symptom.Calling), call), (nameof(Symptom.BoxOverSetpoint), -0.5), (second, 0)]));

    [Fact]
    public void Without_the_rooms_temperature_nobody_knows_whether_it_rightly_rests() =>
        Assert.False(HasSound([(nameof(Symptom.Calling), 1), (nameof(Symptom.ThermometerGap), 0)]));

    // A superheat 2.5 K under the usual: an overfeeding valve fits (2.6 under, scatter 0.6) a little better than a sound one (2.2 under, scatter 0.7).
    [Theory]
    [InlineData(0.3, 0.3, true)]
    [InlineData(0.31, 0.3, false)]
    public void A_room_that_is_held_puts_the_sound_plant_first(double over, double error, bool first) => Assert.Equal(first, FirstOf(Held(over, error)) == FaultCode.NoFault);

    [Fact]
    public void A_room_on_its_way_down_does_so_as_well() => Assert.Equal(FaultCode.NoFault, FirstOf([.. Held(8, 0.3), (nameof(Symptom.PullingDown), 0, 0)]));

    [Fact]
    public void A_room_said_not_to_be_on_its_way_does_not() => Assert.NotEqual(FaultCode.NoFault, FirstOf([.. Held(8, 0.3), (nameof(Symptom.PullingDown), 1, 0)]));

    // A dirty look of the condenser speaks against both alike.
    [Fact]
    public void A_finding_that_speaks_against_both_changes_nothing_between_them() =>
        Assert.Equal(FaultCode.NoFault, FirstOf([.. Held(0.3, 0.3), (nameof(Symptom.CondenserObstruction), 1, 0)]));

    // A defrost contradicts both, and a contradicted sound plant is not put first.
    [Fact]
    public void A_sound_plant_that_is_contradicted_is_not_put_first() =>
        Assert.Equal(FaultCode.ExpansionValveOverfeeding, FirstOf([.. Held(0.3, 0.3), (nameof(Symptom.Defrost), 0, 0)]));

    // 2.65 K under the usual, with 6.5 K at the compressor, is 0.52 of squared error out for a sound plant, 2.7 K is 0.62: three quarters of an error, 0.56, lies between.
    [Theory]
    [InlineData(-2.65, FaultCode.NoFault)]
    [InlineData(-2.7, FaultCode.ExpansionValveOverfeeding)]
    public void A_fault_without_a_sign_out_of_the_usual_needs_three_quarters_of_an_error_to_stand_before_a_sound_plant(double superheat, FaultCode first) =>
        Assert.Equal(first, FirstOf([.. Held(0.3, 0.3).Skip(1), (nameof(Symptom.SuperheatExcess), superheat, 0)]));

    // Flashing glass, hungry coil, 2 K of subcooling: a restriction fits a quarter of an error better than a short charge.
    [Theory]
    [InlineData(null, FaultCode.Undercharge)]
    [InlineData(nameof(Symptom.Door), FaultCode.Undercharge)]
    [InlineData(nameof(Symptom.DrierDrop), FaultCode.LiquidLineRestriction)]
    [InlineData(nameof(Symptom.LiquidLineDrop), FaultCode.LiquidLineRestriction)]
    public void A_flashing_glass_is_first_a_charge_question_until_a_drop_was_looked_for(string? also, FaultCode first)
    {
        (string, double, double)[] read = also is null ? [] : [(also, also == nameof(Symptom.Door) ? 1 : 2.5, 0)];

        Assert.Equal(first, FirstOf([(nameof(Symptom.SightGlass), 1, 0), (nameof(Symptom.SuperheatExcess), 5, 0), (nameof(Symptom.Subcooling), 2, 0), .. read]));
    }

    // With the glass not looked at a starved valve fits as well, and better than the charge: that is no question of the charge.
    [Fact]
    public void The_charge_goes_only_before_a_restriction() =>
        Assert.Equal(
            FaultCode.ExpansionValveStarving,
            FirstOf([(nameof(Symptom.SuperheatExcess), 5, 0), (nameof(Symptom.Subcooling), 1.6, 0), (nameof(Symptom.ColdSplitExcess), 3.2, 0), (nameof(Symptom.ValveDemand), 0.8, 0)]));

    private static (string, double, double)[] Held(double over, double error) =>
    [
        (nameof(Symptom.SuperheatExcess), -2.5, 0), (nameof(Symptom.Subcooling), 3, 0), (nameof(Symptom.HeadExcess), 0, 0), (nameof(Symptom.TdShare), 1.1, 0),
        (nameof(Symptom.CompressorSuperheat), 6.5, 0), (nameof(Symptom.BoxOverCall), over, error),
    ];

    private static bool HasSound((string Symptom, double Value)[] readings)
    {
        foreach (var weighing in Ranking.Of(Table([.. readings.Select(r => (r.Symptom, r.Value, 0.0))])))
        {
            if (weighing.Rule.Code == FaultCode.NoFault)
            {
                return true;
            }
        }

        return false;
    }

    private static FaultCode FirstOf((string, double, double)[] readings) => Ranking.Of(Table(readings))[0].Rule.Code;

    private static SymptomTable Table((string Symptom, double Value, double Error)[] readings)
    {
        var table = new SymptomTable();
        foreach (var (symptom, value, error) in readings)
        {
            table[Enum.Parse<Symptom>(symptom)] = new(value, error);
        }

        return table;
    }
}
