using Assistant.Trade.Cautions;

namespace Assistant.Dialogue.Tests.Judgements;

/// <summary>Charging, setting the valve and the close-out. R-134a: 20 psig is 22.4 °F, 104 psig 90 °F, 20 °F is 18.4 psig (ASHRAE tables, from memory).</summary>
public class ChargeJudgementTests
{
    // 21 lb in it: at 70 °F it stands far over 20 psig (71 psig), at 10 °F under it (12 psig); a quarter pound is nothing.
    [Theory]
    [InlineData("48 lb", "70 degF", "feeds")]
    [InlineData("48 lb", "10 degF", "cold")]
    [InlineData("27.2 lb", "10 degF", "empty")]
    public void A_cylinder_is_cold_or_empty_by_weight_and_temperature(string weight, string temperature, string outcome)
    {
        var judged = Judging.Of("cylinder-feed", "refrigerant = R134a", $"cylinder_weight = {weight}", "cylinder_tare = 27 lb", $"cylinder_temperature = {temperature}", "suction_pressure = 20 psig");

        Assert.Equal(outcome, judged.Outcome);
        Assert.Equal(outcome == "cold", judged.Cautions.Contains(CautionCode.CylinderHeating));
    }

    [Theory]
    [InlineData("R448A", "liquid")]
    [InlineData("R404A", "liquid")]
    [InlineData("R134a", "either")]
    public void A_blend_leaves_the_cylinder_as_liquid(string refrigerant, string outcome)
    {
        var judged = Judging.Of("charge-phase", $"refrigerant = {refrigerant}");

        Assert.Equal(outcome, judged.Outcome);
        Assert.Contains(CautionCode.LiquidToSuction, judged.Cautions);
    }

    [Theory]
    [InlineData("flashing", 5, 104, "flashing")]
    [InlineData("clear", 5, 90, "head-low")]
    [InlineData("clear", 5, 104, "charged")]
    [InlineData("flashing", 12.5, 104, "flashing")]
    [InlineData("flashing", 13, 104, "over")]
    [InlineData("clear", 13, 104, "over")]
    public void Glass_and_head_say_when_it_is_charged_and_the_plate_when_to_stop(string glass, double added, double head, string outcome) => Assert.Equal(
        outcome,
        Judging.Of(
            "charge-state", "refrigerant = R134a", "head_pressure_control = valve", "head_pressure_control_setting = 90 degF", "full_charge = 12 lb", $"sight_glass = {glass}",
            FormattableString.Invariant($"charge_added = {added} lb"), FormattableString.Invariant($"discharge_pressure = {head} psig")).Outcome);

    // By hand: held at 90 °F with a split of 30, 0 °F outside floods 1 - 30/90 = 0.667, today at 60 °F nothing. 0.21 ft3 are 5.947 l; liquid R-134a at 45 °F
    // 1273 kg/m3, vapour at 90 °F 39.6 (ASHRAE tables, from memory): 0.667 x 5.947 l x 1.233 kg/l = 4.89 kg.
    [Fact]
    public void The_winter_charge_is_the_flooding_still_to_come()
    {
        var judged = Judging.Of("winter-charge", Winter("60 degF", "0.6 ft3"));

        Assert.Equal("add", judged.Outcome);
        Assert.Equal(4.89, Judging.Number(judged, "extra"), 1);
        Assert.Equal("from receiver-fits assumes", Judging.Reasons(judged));
    }

    [Theory]
    [InlineData("60 degF", "0.3 ft3", "no-room")]
    [InlineData("0 degF", "0.6 ft3", "none-needed")]
    public void The_receivers_room_and_todays_flooding_count(string today, string receiver, string outcome) =>
        Assert.Equal(outcome, Judging.Of("winter-charge", Winter(today, receiver)).Outcome);

    [Theory]
    [InlineData("none", "no-flooding")]
    [InlineData("fan-cycling", "no-flooding")]
    [InlineData("valve", "unknown")]
    public void Without_flooding_there_is_no_winter_charge(string control, string outcome) =>
        Assert.Equal(outcome, Judging.Of("winter-charge", "refrigerant = R134a", $"head_pressure_control = {control}").Outcome);

    // 20 psig is 22.4 °F dew: 32.4 at the bulb is 10 over it, 45 is 22.6, 26 is 3.6, 15 can not be.
    [Theory]
    [InlineData(32.4, "in-range")]
    [InlineData(45, "high")]
    [InlineData(26, "low")]
    [InlineData(15, "negative")]
    public void The_superheat_says_which_way_to_turn(double bulb, string outcome) =>
        Assert.Equal(outcome, Judging.Of("valve-superheat", Valve(bulb)).Outcome);

    [Fact]
    public void Far_off_it_is_half_a_turn_and_near_a_quarter()
    {
        Assert.Equal("half-turn", Judging.Of("valve-superheat", Valve(50)).Parts.Single(p => p.Name == "turn").Word);
        Assert.Equal("quarter-turn", Judging.Of("valve-superheat", Valve(38)).Parts.Single(p => p.Name == "turn").Word);
    }

    [Theory]
    [InlineData("hunting", "45 28 44 29")]
    [InlineData("high", "50 47 44 42")]
    [InlineData("no-answer", "45 45.5 45 45.2")]
    public void Swings_are_hunting_and_a_valve_that_does_not_move_is_said(string outcome, string bulbs) =>
        Assert.Equal(outcome, Judging.Of("valve-superheat", Valve([.. bulbs.Split(' ').Select(b => double.Parse(b, System.Globalization.CultureInfo.InvariantCulture))])).Outcome);

    [Theory]
    [InlineData("none", "clear", "37 degF", "ready")]
    [InlineData("light", "clear", "37 degF", "iced")]
    [InlineData("none", "flashing", "37 degF", "starved")]
    [InlineData("none", "clear", "48 degF", "box-warm")]
    public void A_superheat_counts_only_with_a_clear_coil_a_clear_glass_and_the_room_near(string ice, string glass, string box, string outcome) =>
        Assert.Equal(outcome, Judging.Of("valve-ready", "metering_device = txv", $"coil_ice = {ice}", $"sight_glass = {glass}", $"box_temperature = {box}", "setpoint = 36 degF").Outcome);

    // 104 psig is 90 °F: 20 over 70 outside; 50 °F over 22.4 is 27.6 of superheat.
    [Theory]
    [InlineData("104 psig", "50 degF", "on-target")]
    [InlineData("171 psig", "50 degF", "off-target")]
    [InlineData("104 psig", "30 degF", "off-target")]
    public void The_last_readings_are_held_against_their_targets(string head, string line, string outcome) => Assert.Equal(
        outcome,
        Judging.Of(
            "final-readings", "refrigerant = R134a", "design_condenser_split = 25 degF", "ambient_temperature = 70 degF", "suction_pressure = 20 psig",
            $"discharge_pressure = {head}", $"suction_line_temperature_at_compressor = {line}").Outcome);

    [Theory]
    [InlineData("36 degF", "there")]
    [InlineData("48 degF", "too-early")]
    public void One_reading_tells_only_that_it_is_there(string box, string outcome) =>
        Assert.Equal(outcome, Judging.Of("pull-down", "setpoint = 36 degF", $"box_temperature = {box}").Outcome);

    [Theory]
    [InlineData("cylinder-feed", "unknown")]
    [InlineData("charge-phase", "unknown")]
    [InlineData("charge-plan", "unknown")]
    [InlineData("charge-state", "unknown")]
    [InlineData("winter-charge", "unknown")]
    [InlineData("valve-ready", "unknown")]
    [InlineData("valve-superheat", "unknown")]
    [InlineData("pull-down", "unknown")]
    [InlineData("final-readings", "unknown")]
    [InlineData("customer-sentence", "nothing")]
    public void With_nothing_known_nothing_is_judged(string judgement, string outcome) => Assert.Equal(outcome, Judging.Of(judgement).Outcome);

    private static string[] Winter(string today, string receiver) =>
    [
        "refrigerant = R134a", "head_pressure_control = valve", "head_pressure_control_setting = 90 degF", "design_condenser_split = 30 degF", "coldest_design_ambient = 0 degF",
        "condenser_volume = 0.21 ft3", $"receiver_volume = {receiver}", "full_charge = 12 lb", $"ambient_temperature = {today}",
    ];

    private static string[] Valve(params double[] bulbs) =>
    [
        "refrigerant = R134a", "application = cooler", "suction_pressure = 20 psig", .. bulbs.Select(b => FormattableString.Invariant($"suction_line_temperature_at_bulb = {b} degF")),
    ];
}
