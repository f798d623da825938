namespace Assistant.Dialogue.Tests.Judgements;

public class LeakJudgementTests
{
    // 30 psig and more finds a leak, under 2 psig there is nothing left. Common practice.
    [Theory]
    [InlineData("30 psig", "enough")]
    [InlineData("29 psig", "too-low")]
    [InlineData("2.1 bar", "enough")]
    [InlineData("2.0 bar", "too-low")]
    [InlineData("1.9 psig", "empty")]
    [InlineData("5 inHg vacuum", "empty")]
    public void The_pressure_at_rest_says_whether_a_leak_can_be_found(string pressure, string outcome) =>
        Assert.Equal(outcome, Judging.Of("leak-pressure", $"standing_pressure = {pressure}").Outcome);

    // R-134a at 70 °F stands at 71.1 psig with liquid left (ASHRAE tables, from memory); at sea level.
    [Fact]
    public void What_liquid_would_stand_at_is_said_beside_it()
    {
        var liquid = Assert.Single(Judging.Of("leak-pressure", "standing_pressure = 40 psig", "refrigerant = R134a", "ambient_temperature = 70 degF").Because);

        Assert.Equal(71.1, liquid.Parts.Single(p => p.Name == "saturation").Amount!.Value.Canonical / 6.894757, 0.3);
    }

    [Theory]
    [InlineData("150 psig", "150 psig", "set")]
    [InlineData("150.1 psig", "150 psig", "over-limit")]
    [InlineData("10 bar", "150 psig", "set")]
    [InlineData("10.4 bar", "150 psig", "over-limit")]
    [InlineData("29 psig", "150 psig", "too-low")]
    [InlineData("400 psig", null, "no-limit")]
    public void Nitrogen_stays_under_the_plate_and_is_enough(string pressure, string? limit, string outcome) =>
        Assert.Equal(outcome, Judging.Of("search-pressure", [$"test_pressure = {pressure}", .. limit is null ? [] : new[] { $"low_side_design_pressure = {limit}" }]).Outcome);

    [Fact]
    public void Suspects_come_first_and_what_was_not_searched_is_not_called_clear()
    {
        var judged = Judging.Of("leak-areas", "choice: leak-coil = sniffs", "choice: leak-condenser = nothing-there", "choice: leak-drier = sniffs");

        Assert.Equal("some", judged.Outcome);
        Assert.Equal(
            ["suspect leak-drier", "suspect leak-coil", "clear-rest 1"],
            judged.Because.Select(r => $"{r.Key[(r.Key.LastIndexOf('.') + 1)..]} {r.Parts[0].Word}"));
        Assert.Equal("none", Judging.Of("leak-areas", "choice: leak-coil = nothing-there").Outcome);
    }

    [Fact]
    public void The_list_holds_every_leak_in_the_order_found()
    {
        Assert.Equal("none-proven", Judging.Of("leak-list").Outcome);
        var judged = Judging.Of("leak-list", "leak: flare nut", "leak: third return bend");
        Assert.Equal(["1 flare nut", "2 third return bend"], judged.Because.Select(r => $"{r.Parts[0].Word} {r.Parts[1].Word}"));
    }
}
