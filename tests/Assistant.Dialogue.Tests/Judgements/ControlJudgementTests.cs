using Assistant.Trade.Cautions;

namespace Assistant.Dialogue.Tests.Judgements;

/// <summary>Setpoints, calls, defrosts and goods. Limits are common practice but for cold food: 41 °F / 5 °C, FDA Food Code 3-501.16.</summary>
public class ControlJudgementTests
{
    [Theory]
    [InlineData("chilled-food", "36 degF", "fits")]
    [InlineData("chilled-food", "3 degC", "fits")]
    [InlineData("chilled-food", "39 degF", "too-warm")]
    [InlineData("chilled-food", "33 degF", "too-cold")]
    [InlineData("frozen-food", "0 degF", "fits")]
    [InlineData("frozen-food", "5 degF", "too-warm")]
    [InlineData("ice-cream", "-5 degF", "too-warm")]
    [InlineData("ice-cream", "-25 degF", "too-cold")]
    [InlineData("produce", "41 degF", "fits")]
    public void The_goods_decide_the_setpoint(string goods, string setpoint, string outcome) =>
        Assert.Equal(outcome, Judging.Of("setpoint-fit", $"choice: stored-goods = {goods}", $"setpoint = {setpoint}").Outcome);

    [Theory]
    [InlineData("6 degF", "differential-wide source")]
    [InlineData("3 degF", "source")]
    [InlineData("1 degF", "differential-narrow source")]
    public void The_differential_is_judged_beside_it(string differential, string reasons) =>
        Assert.Equal(reasons, Judging.Reasons(Judging.Of("setpoint-fit", "choice: stored-goods = produce", "setpoint = 36 degF", $"differential = {differential}")));

    // Set at 36, differential 4: it calls from 40 on and rests at 36; a degree is what two thermometers are apart.
    [Theory]
    [InlineData(51, "yes", "rightly-calling")]
    [InlineData(40, "yes", "rightly-calling")]
    [InlineData(51, "no", "should-call")]
    [InlineData(40.5, "no", "between")]
    [InlineData(38, "yes", "between")]
    [InlineData(38, "no", "between")]
    [InlineData(36, "no", "rightly-resting")]
    [InlineData(34, "yes", "should-rest")]
    public void Whether_it_should_be_calling_follows_from_setpoint_and_differential(double box, string calling, string outcome) => Assert.Equal(
        outcome,
        Judging.Of("call-due", "setpoint = 36 degF", "differential = 4 degF", FormattableString.Invariant($"box_temperature = {box} degF"), $"calling_for_cooling = {calling}").Outcome);

    [Theory]
    [InlineData("freezer", "three-or-four", "twenty-to-forty-five", "usual")]
    [InlineData("freezer", "one-or-two", "twenty-to-forty-five", "too-few")]
    [InlineData("freezer", "no-defrosts", "under-twenty", "too-few")]
    [InlineData("freezer", "three-or-four", "under-twenty", "too-short")]
    [InlineData("freezer", "five-or-more", "twenty-to-forty-five", "too-many")]
    [InlineData("cooler", "one-or-two", "under-twenty", "usual")]
    [InlineData("cooler", "three-or-four", "over-forty-five", "too-long")]
    [InlineData("cooler", "no-defrosts", "over-forty-five", "usual")]
    public void Defrosts_suit_the_room_or_not(string application, string count, string length, string outcome) =>
        Assert.Equal(outcome, Judging.Of("defrost-fit", $"application = {application}", $"choice: defrosts-a-day = {count}", $"choice: defrost-length = {length}").Outcome);

    [Theory]
    [InlineData("cooler", "41 degF", "cold")]
    [InlineData("cooler", "42 degF", "warm")]
    [InlineData("cooler", "5 degC", "cold")]
    [InlineData("freezer", "5 degF", "cold")]
    [InlineData("freezer", "15 degF", "thawing")]
    [InlineData("freezer", "45 degF", "warm")]
    public void The_goods_own_temperature_decides_and_warns(string application, string product, string outcome)
    {
        var judged = Judging.Of("product", $"application = {application}", $"product_temperature = {product}");

        Assert.Equal(outcome, judged.Outcome);
        Assert.Equal(outcome != "cold", judged.Cautions.Contains(CautionCode.FoodSafety));
    }

    // R-134a: 90 °F is 104.3 psig, 60 °F 57.7, 120 °F 171.2 (ASHRAE tables, from memory). Held at 90 with a split of 30: below 60 °F outside it has to hold.
    [Theory]
    [InlineData(20, 104, "holds")]
    [InlineData(20, 90, "low")]
    [InlineData(20, 125, "high")]
    [InlineData(70, 125, "too-warm")]
    [InlineData(70, 171, "high")]
    public void The_head_shows_whether_the_control_holds(double ambient, double head, string outcome) => Assert.Equal(
        outcome,
        Judging.Of(
            "head-control-test", "refrigerant = R134a", "head_pressure_control = valve", "head_pressure_control_setting = 90 degF", "design_condenser_split = 30 degF",
            FormattableString.Invariant($"ambient_temperature = {ambient} degF"), FormattableString.Invariant($"discharge_pressure = {head} psig")).Outcome);

    [Theory]
    [InlineData("setpoint-fit")]
    [InlineData("call-due")]
    [InlineData("defrost-fit")]
    [InlineData("product")]
    [InlineData("head-control-test")]
    public void With_nothing_known_nothing_is_judged(string judgement) => Assert.Equal("unknown", Judging.Of(judgement).Outcome);
}
