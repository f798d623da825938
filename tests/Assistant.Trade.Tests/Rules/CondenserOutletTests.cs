using Assistant.Trade.Rules;

namespace Assistant.Trade.Tests.Rules;

/// <summary>The condenser's outlet stands for the liquid line where that was not read: the trade takes subcooling at either, as long as nothing is mixed in between.</summary>
public class CondenserOutletTests
{
    // R22 at 280 psig is 125.5 degF of condensing (125 degF is 278 psig by printed charts, from memory; one substance, so bubble and dew are one).
    private static readonly string[] HighHead =
        ["refrigerant R22", "application cooler", "compressor running", "ambient_temperature 80 degF", "discharge_pressure 280 psig", "condenser_outlet_temperature 101 degF", "condenser_coil clean", "condenser_fans all"];

    [Fact]
    public void Subcooling_is_told_from_the_outlet_where_the_line_was_not_read() =>
        Assert.Equal(13.6, Assessor.Assess(FactsOf.Visit(HighHead)).Derived.Subcooling!.Value.Kelvins, 0.4);

    [Fact]
    public void The_liquid_line_comes_before_the_outlet() =>
        Assert.Equal(8.1, Assessor.Assess(FactsOf.Visit([.. HighHead, "liquid_line_temperature 111 degF"])).Derived.Subcooling!.Value.Kelvins, 0.4);

    [Theory]
    [InlineData("head_pressure_control none")]
    [InlineData("head_pressure_control fan-cycling")]
    public void Where_nothing_is_mixed_in_it_is_judged_as_the_line_would_be(string control) =>
        Assert.Contains(First([.. HighHead, control]).Because, r => r.Key == "reason.subcooling-high");

    [Theory]
    [InlineData("head_pressure_control valve", "discharge_pressure 280 psig")]
    [InlineData("ambient_temperature 10 degF", "discharge_pressure 170 psig")]
    public void Behind_a_valve_that_mixes_hot_gas_in_it_tells_nothing_of_the_liquid(params string[] cold) =>
        Assert.DoesNotContain(
            Assessor.Assess(FactsOf.Visit([.. HighHead.Where(l => !cold.Any(c => c.Split(' ')[0] == l.Split(' ')[0])), .. cold])).Findings.SelectMany(f => f.Because.Concat(f.Against)),
            r => r.Key.StartsWith("reason.subcooling", StringComparison.Ordinal));

    [Fact]
    public void A_subcooling_said_outright_still_counts_behind_the_valve() =>
        Assert.Contains(First([.. HighHead, "head_pressure_control valve", "subcooling 25 degF"]).Because, r => r.Key == "reason.subcooling-high");

    private static Finding First(string[] lines) => Assessor.Assess(FactsOf.Visit(lines)).Findings[0];
}
