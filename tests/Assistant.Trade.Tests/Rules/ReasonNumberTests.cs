using Assistant.Trade.Rules;

namespace Assistant.Trade.Tests.Rules;

/// <summary>A reason carries the numbers it rests on. Saturation from the embedded tables, rounded as a gauge is read; the rest worked by hand.</summary>
public class ReasonNumberTests
{
    // degC and K. R404A: 225 psig is 97 degF (36.1 degC), 300 psig 118 degF (47.7 degC), 80 psig 37 degF (2.7 degC).
    [Theory]
    [InlineData(FaultCode.Overcharge, "reason.head-excess-high", "condensing", 47.7)]
    [InlineData(FaultCode.Overcharge, "reason.head-excess-high", "expected", 39.2)]
    [InlineData(FaultCode.Overcharge, "reason.head-excess-high", "ambient", 23.9)]
    [InlineData(FaultCode.Overcharge, "reason.subcooling-high", "subcooling", 13.8)]
    [InlineData(FaultCode.Overcharge, "reason.standing-excess-normal", "standing", 23.9)]
    [InlineData(FaultCode.Noncondensables, "reason.standing-excess-high", "standing", 28.5)]
    [InlineData(FaultCode.Noncondensables, "reason.standing-excess-high", "ambient", 23.9)]
    [InlineData(FaultCode.HeadPressureControlLow, "reason.head-over-setting-low", "condensing", 2.7)]
    [InlineData(FaultCode.HeadPressureControlLow, "reason.head-over-setting-low", "setting", 29.4)]
    [InlineData(FaultCode.HeadPressureControlLow, "reason.cold-split-excess-low", "split", 14.9)]
    [InlineData(FaultCode.HeadPressureControlLow, "reason.cold-split-excess-low", "design", 13.9)]
    [InlineData(FaultCode.LiquidLineRestriction, "reason.drier-drop-high", "drop", 5.6)]
    [InlineData(FaultCode.ExpansionValveOverfeeding, "reason.compressor-superheat-low", "superheat", 4.2)]
    [InlineData(FaultCode.ExpansionValveOverfeeding, "reason.superheat-excess-low", "superheat", 2.5)]
    [InlineData(FaultCode.ExpansionValveOverfeeding, "reason.superheat-excess-low", "expected", 5.6)]
    [InlineData(FaultCode.CoilIced, "reason.td-share-high", "td", 19.9)]
    [InlineData(FaultCode.CoilIced, "reason.td-share-high", "design", 6.7)]
    [InlineData(FaultCode.CompressorInefficient, "reason.split-share-low", "split", 6.1)]
    [InlineData(FaultCode.CompressorInefficient, "reason.split-share-low", "expected", 19.6)]
    [InlineData(FaultCode.CompressorInefficient, "reason.current-share-normal", "share", 0.545)]
    [InlineData(FaultCode.CompressorNotRunning, "reason.resting-gap-low", "low", 6.2)]
    [InlineData(FaultCode.CompressorNotRunning, "reason.resting-gap-low", "high", 6.2)]
    [InlineData(FaultCode.NoLiquidFeed, "reason.resting-gap-normal", "low", -26.2)]
    [InlineData(FaultCode.NoLiquidFeed, "reason.resting-gap-normal", "high", 22.1)]
    [InlineData(FaultCode.NoLiquidFeed, "reason.resting-td-high", "suction", -26.2)]
    [InlineData(FaultCode.NoLiquidFeed, "reason.resting-td-high", "box", 8.9)]
    [InlineData(FaultCode.NoCallForCooling, "reason.box-over-call-high", "box", 7.8)]
    [InlineData(FaultCode.NoCallForCooling, "reason.box-over-call-high", "over", 3.9)]
    [InlineData(FaultCode.NoCallForCooling, "reason.setting-excess-normal", "setpoint", 2.2)]
    [InlineData(FaultCode.NoCallForCooling, "reason.setting-excess-normal", "differential", 1.67)]
    [InlineData(FaultCode.NoCallForCooling, "reason.setting-excess-normal", "limit", 5)]
    [InlineData(FaultCode.ControlSetting, "reason.setting-excess-high", "setpoint", 7.8)]
    [InlineData(FaultCode.SensorError, "reason.thermometer-gap-high", "gap", 4.4)]
    [InlineData(FaultCode.NoFault, "reason.box-over-setpoint-normal", "box", 3.3)]
    [InlineData(FaultCode.NoFault, "reason.box-over-setpoint-normal", "setpoint", 2.2)]
    public void The_reason_of_a_plain_case_carries_its_number(FaultCode fault, string key, string part, double expected)
    {
        var reason = PlainCases.Of(fault).Findings[0].Because.Single(r => r.Key == key);

        Assert.Equal(expected, reason.Parts.Single(p => p.Name == part).Amount!.Value.Canonical, 0.6);
    }

    [Theory]
    [InlineData("evaporator_air_in 38 degF;evaporator_air_out 30 degF", "reason.air-share-normal", "drop", 4.4)]
    [InlineData("liquid_line_temperature_at_coil 91 degF", "reason.liquid-line-drop-normal", "drop", 0.6)]
    [InlineData("differential 4 degF", "reason.setting-excess-normal", "differential", 2.2)]
    public void What_fits_a_sound_plant_is_said_with_its_number(string change, string key, string part, double expected)
    {
        var reason = Assessor.Assess(PlainCases.With(change)).Findings[0].Because.Single(r => r.Key == key);

        Assert.Equal(expected, reason.Parts.Single(p => p.Name == part).Amount!.Value.Canonical, 0.6);
    }

    // 145 psig is 69 degF dew (the saturation table of R404A); 84 degF is what such controls are usually set for.
    [Theory]
    [InlineData("", "reason.head-over-usual-setting-low")]
    [InlineData("head_pressure_control_setting 90 degF", "reason.head-over-setting-low")]
    public void A_setting_that_nobody_told_is_called_the_usual_one(string setting, string key)
    {
        string[] told = ["refrigerant R404A", "application freezer", "box_temperature 14 degF", "ambient_temperature 28 degF", "compressor running", "sight_glass flashing",
            "suction_pressure 2 psig", "discharge_pressure 145 psig", .. setting.Length > 0 ? new[] { setting } : []];
        var reasons = Assessor.Assess(FactsOf.Visit(told)).Findings.SelectMany(f => f.Because.Concat(f.Against)).Select(r => r.Key).ToList();

        Assert.Contains(key, reasons);
        Assert.DoesNotContain(reasons, r => r != key && r.StartsWith("reason.head-over", StringComparison.Ordinal));
    }

    // A split said outright: 25 degF is the plate's, so 10 is little and 45 is much.
    [Theory]
    [InlineData("condenser_split 45 degF", "condenser_coil dirty", FaultCode.CondenserAirflow, "reason.split-share-high", 25, 13.9)]
    public void A_split_said_outright_is_spoken_of_as_a_split(string split, string seen, FaultCode fault, string key, double saidKelvins, double expectedKelvins)
    {
        var finding = Assessor.Assess(FactsOf.Visit("refrigerant R404A", "application cooler", "design_condenser_split 25 degF", "compressor running", split, seen, "condenser_fans all")).Findings[0];
        var reason = finding.Because.First(r => r.Key == key);

        Assert.Equal(fault, finding.Code);
        Assert.Equal(saidKelvins, reason.Parts.Single(p => p.Name == "split").Amount!.Value.Canonical, 0.1);
        Assert.Equal(expectedKelvins, reason.Parts.Single(p => p.Name == "expected").Amount!.Value.Canonical, 0.6);
    }

    [Fact]
    public void A_small_split_said_outright_is_called_small()
    {
        var weak = Assessor.Assess(FactsOf.Visit("refrigerant R404A", "application cooler", "design_condenser_split 25 degF", "design_evaporator_td 10 degF", "compressor running", "condenser_split 9 degF",
            "saturated_suction_temperature 40 degF", "box_temperature 47 degF", "setpoint 36 degF", "sight_glass clear", "compressor_current 5 A", "rated_current 10 A")).Findings[0];

        Assert.Equal(FaultCode.CompressorInefficient, weak.Code);
        Assert.Contains(weak.Because, r => r.Key == "reason.split-share-low");
    }

    [Fact]
    public void A_usual_split_said_outright_is_called_in_order()
    {
        var sound = Assessor.Assess(FactsOf.Visit("refrigerant R404A", "application cooler", "design_condenser_split 25 degF", "compressor running", "condenser_split 24 degF", "superheat 9 degF",
            "subcooling 7 degF", "sight_glass clear", "box_temperature 37 degF", "setpoint 36 degF")).Findings[0];

        Assert.Equal(FaultCode.NoFault, sound.Code);
        Assert.All(sound.Because.Where(r => r.Parts.Any(p => p.Name == "split")), r => Assert.Equal("reason.split-share-normal", r.Key));
    }

    [Fact]
    public void Goods_and_air_are_named_with_their_temperatures()
    {
        var reason = Assessor.Assess(FactsOf.Visit("box_temperature 50 degF", "product_temperature 70 degF", "setpoint 36 degF", "calling_for_cooling yes", "compressor running")).Findings[0].Because
            .Single(r => r.Key == "reason.product-over-box-high");

        Assert.Equal(21.1, reason.Parts.Single(p => p.Name == "product").Amount!.Value.Canonical, 0.1);
        Assert.Equal(10, reason.Parts.Single(p => p.Name == "box").Amount!.Value.Canonical, 0.1);
    }

    [Fact]
    public void An_empty_plant_is_named_with_its_pressure_as_a_temperature_and_the_coldest_place()
    {
        // R404A at 45 psig is 11 degF by the dew point; the room at 64 degF is colder than the 72 outside.
        var reason = Assessor.Assess(FactsOf.Visit("refrigerant R404A", "compressor off", "calling_for_cooling yes", "ambient_temperature 72 degF", "box_temperature 64 degF", "standing_pressure 45 psig")).Findings
            .Single(f => f.Code == FaultCode.Undercharge).Because.Single(r => r.Key == "reason.equalised-over-coldest-low");

        Assert.Equal(-11.5, reason.Parts.Single(p => p.Name == "standing").Amount!.Value.Canonical, 0.6);
        Assert.Equal(17.8, reason.Parts.Single(p => p.Name == "coldest").Amount!.Value.Canonical, 0.1);
    }

    [Fact]
    public void Every_key_a_reason_may_carry_is_listed_once() => Assert.Equal(RuleReasons.Keys.Count(), RuleReasons.Keys.Distinct().Count());

    [Theory]
    [InlineData("reason.superheat-excess-low")]
    [InlineData("reason.superheat-excess-normal")]
    [InlineData("reason.superheat-excess-high")]
    [InlineData("reason.sight-glass-flashing")]
    [InlineData("reason.pulling-down-yes")]
    [InlineData("reason.outside-no-table")]
    public void The_listed_keys_cover_numbers_words_and_what_lies_outside(string key) => Assert.Contains(key, RuleReasons.Keys);
}
