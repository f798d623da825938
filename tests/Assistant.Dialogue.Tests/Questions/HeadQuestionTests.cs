using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Questions;

/// <summary>Subcooling, split, targets, settings: the high side's questions.</summary>
public sealed class HeadQuestionTests
{
    // R-404A's bubble point at 201 psig is 89 degF (common charts: 90 degF at about 204 psig bubble).
    [Fact]
    public void Subcooling_goes_by_the_bubble_point()
    {
        var call = new Call("subcooling") { Refrigerant = "R448A" }.With(210.9, UnitOfMeasure.Psig).With(82, UnitOfMeasure.Fahrenheit);
        Assert.Equal("Subcooling 8 °F.", call.Said());
        Assert.Matches(@"^Bubble point 90 °F \(dew (99|100|101) °F\), liquid 82 °F.$", call.Because());
    }

    [Fact]
    public void From_the_discharge_gauge_subcooling_reads_high()
    {
        var call = new Call("subcooling").Knowing(FactCatalogue.Refrigerant, "R448A").Knowing(FactCatalogue.DischargePressure, 210.9, UnitOfMeasure.Psig).Knowing(FactCatalogue.LiquidLineTemperature, 82, UnitOfMeasure.Fahrenheit);
        Assert.Contains("reads high", call.Because(), StringComparison.Ordinal);
        var better = call.Knowing(FactCatalogue.LiquidPressure, 205, UnitOfMeasure.Psig);
        Assert.DoesNotContain("reads high", better.Because(), StringComparison.Ordinal);
        Assert.Matches("^Subcooling 6(.[0-9])? °F.$", better.Said());
    }

    [Fact]
    public void Liquid_above_its_bubble_point_is_questioned() =>
        Assert.Contains("boiling in the line", new Call("subcooling") { Refrigerant = "R448A" }.With(210.9, UnitOfMeasure.Psig).With(100, UnitOfMeasure.Fahrenheit).Said(), StringComparison.Ordinal);

    // R-448A at 181.5 psig condenses at 90 degF dew.
    [Fact]
    public void A_split_is_set_against_the_plate_or_the_usual()
    {
        var call = new Call("split").Knowing(FactCatalogue.Refrigerant, "R448A").Knowing(FactCatalogue.DischargePressure, 181.5, UnitOfMeasure.Psig).Knowing(FactCatalogue.AmbientTemperature, 65, UnitOfMeasure.Fahrenheit);
        Assert.Equal("Split 25 °F; usual is 20 °F to 30 °F.", call.Said());
        Assert.Equal("Split 25 °F; the plate says 15 °F.", call.Knowing(FactCatalogue.DesignCondenserSplit, 15, UnitOfMeasure.FahrenheitDifference).Said());
    }

    // 75 degF and 15 degF of plate split condense at 90 degF: 181.5 psig dew.
    [Fact]
    public void The_head_to_expect_is_ambient_and_the_plate_s_split()
    {
        var call = new Call("target") { About = FactCatalogue.DischargePressure }.Knowing(FactCatalogue.Refrigerant, "R448A").Knowing(FactCatalogue.DesignCondenserSplit, 15, UnitOfMeasure.FahrenheitDifference).With(75, null, FactCatalogue.AmbientTemperature);
        Assert.Matches(@"^At 75 °F outside about 18[12] psig, condensing at 90 °F \(dew\).$", call.Said());
    }

    [Fact]
    public void Without_a_plate_the_head_is_a_range_and_an_outside_temperature_says_it_is_the_head_that_is_meant() =>
        Assert.Matches(
            @"^At 60 °F outside about 15[0-9] psig to 18[12] psig, condensing at 80 °F to 90 °F \(dew\).$",
            new Call("target").Knowing(FactCatalogue.Refrigerant, "R448A").With(60, UnitOfMeasure.Fahrenheit).Said());

    [Fact]
    public void In_the_cold_the_head_to_expect_is_the_one_that_is_held() =>
        Assert.Contains(
            "condensing at 90 °F (dew)",
            new Call("target") { About = FactCatalogue.DischargePressure }.Knowing(FactCatalogue.Refrigerant, "R448A").Knowing(FactCatalogue.HeadPressureControlSetting, 90, UnitOfMeasure.Fahrenheit)
                .Knowing(FactCatalogue.AmbientTemperature, 10, UnitOfMeasure.Fahrenheit).Said(),
            StringComparison.Ordinal);

    [Fact]
    public void The_superheat_to_look_for_follows_room_and_td()
    {
        Assert.Equal("At the evaporator 8 °F to 12 °F for a cooler, 6 °F to 8 °F for a freezer.", new Call("target").Said());
        Assert.Equal("At the evaporator 6 °F to 8 °F.", new Call("target").Knowing(FactCatalogue.Application, "freezer").Said());
        Assert.StartsWith("At the evaporator 6 °F to 10 °F; aim at 7 °F", new Call("target").Knowing(FactCatalogue.Application, "cooler").Knowing(FactCatalogue.DesignEvaporatorTd, 10, UnitOfMeasure.FahrenheitDifference).Said(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_subcooling_to_look_for_gives_way_to_the_glass() =>
        Assert.Contains("glass", new Call("target") { About = FactCatalogue.Subcooling }.Said(), StringComparison.Ordinal);

    [Fact]
    public void The_split_and_the_td_to_look_for_are_the_plate_s_or_the_usual()
    {
        Assert.StartsWith("Usually 20 °F to 30 °F over the air", new Call("target") { About = FactCatalogue.CondenserSplit }.Said(), StringComparison.Ordinal);
        Assert.Equal("The plate says 15 °F over the air.", new Call("target") { About = FactCatalogue.CondenserSplit }.Knowing(FactCatalogue.DesignCondenserSplit, 15, UnitOfMeasure.FahrenheitDifference).Said());
        Assert.StartsWith("Usually 8 °F to 12 °F under the air", new Call("target") { About = FactCatalogue.DesignEvaporatorTd }.Said(), StringComparison.Ordinal);
    }

    // R-134a at 22 degF less a TD of 10 is 12 degF: 13.2 psig (common charts).
    [Fact]
    public void The_suction_to_expect_is_the_room_less_the_td() =>
        Assert.Matches(
            @"^With the room at 22 °F about 13 psig, evaporating at 12 °F \(dew\).$",
            new Call("target") { About = FactCatalogue.SuctionPressure }.Knowing(FactCatalogue.Refrigerant, "R134a").Knowing(FactCatalogue.Setpoint, 22, UnitOfMeasure.Fahrenheit).Knowing(FactCatalogue.DesignEvaporatorTd, 10, UnitOfMeasure.FahrenheitDifference).Said());

    // Common practice: 90 less 30 is 60 degF.
    [Fact]
    public void The_lowest_ambient_is_the_setting_less_the_split()
    {
        Assert.StartsWith(
            "Down to about 60 °F outside",
            new Call("minimum-ambient").Knowing(FactCatalogue.HeadPressureControlSetting, 90, UnitOfMeasure.Fahrenheit).Knowing(FactCatalogue.DesignCondenserSplit, 30, UnitOfMeasure.FahrenheitDifference).Said(),
            StringComparison.Ordinal);
        Assert.StartsWith("Down to about 60 °F to 70 °F outside", new Call("minimum-ambient").Said(), StringComparison.Ordinal);
    }

    [Fact]
    public void Degrees_on_a_blend_without_a_basis_are_asked_about()
    {
        var call = new Call("minimum-ambient").Knowing(FactCatalogue.Refrigerant, "R448A").Knowing(FactCatalogue.HeadPressureControlSetting, 90, UnitOfMeasure.Fahrenheit);
        Assert.Contains("dew or as bubble", call.Answered().Needs!.Full, StringComparison.Ordinal);
        Assert.Null(call.Knowing(FactCatalogue.SaturationBasis, "dew").Answered().Needs);
        Assert.Null(call.Knowing(FactCatalogue.Refrigerant, "R134a").Answered().Needs);
    }

    // Bubble 90 degF is 210.9 psig, which condenses at about 100 degF dew: less 30 that is 70.
    [Fact]
    public void A_setting_in_bubble_degrees_is_compared_as_pressure() =>
        Assert.Matches(
            "^Down to about (69|70|71) °F outside",
            new Call("minimum-ambient").Knowing(FactCatalogue.Refrigerant, "R448A").Knowing(FactCatalogue.HeadPressureControlSetting, 90, UnitOfMeasure.Fahrenheit)
                .Knowing(FactCatalogue.SaturationBasis, "bubble").Knowing(FactCatalogue.DesignCondenserSplit, 30, UnitOfMeasure.FahrenheitDifference).Said());

    [Fact]
    public void The_head_control_s_setting_is_said_as_a_pressure_both_ways()
    {
        var call = new Call("setpoint-guide") { About = FactCatalogue.HeadPressureControlSetting }.Knowing(FactCatalogue.Refrigerant, "R448A");
        Assert.Matches(@"^No setting is on record. Usual is 90 °F \(dew\): that is 18[12] psig on R448A.$", call.Said());
        Assert.Contains("meant as bubble, it is 211 psig", call.Because(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_room_s_setpoint_follows_what_it_is_for_and_food_safety()
    {
        Assert.Equal("A freezer usually -10 °F to 0 °F.", new Call("setpoint-guide").Knowing(FactCatalogue.Application, "freezer").Said());
        Assert.Equal("A cooler for food usually 35 °F to 38 °F.", new Call("setpoint-guide").Knowing(FactCatalogue.Application, "cooler").Said());
        Assert.Contains("41 °F (FDA Food Code 3-501.16)", new Call("setpoint-guide").Because(), StringComparison.Ordinal);
    }

    // R-134a from 0.14 MPa and -10 degC to 0.8 MPa at 65 % isentropic: about 66 degC.
    [Fact]
    public void The_discharge_line_is_reckoned_and_a_hot_one_warned_of()
    {
        var call = new Call("discharge-temperature") { Units = UnitSystem.Metric }.Knowing(FactCatalogue.Refrigerant, "R134a").Knowing(FactCatalogue.SuctionPressure, 140, UnitOfMeasure.KilopascalAbsolute)
            .Knowing(FactCatalogue.SuctionLineTemperatureAtCompressor, -10, UnitOfMeasure.Celsius).Knowing(FactCatalogue.DischargePressure, 800, UnitOfMeasure.KilopascalAbsolute);
        Assert.Matches("^The discharge line should be about 6[3-9] °C.$", call.Said());
        Assert.Contains("CAUTION: you read 110 °C", call.Knowing(FactCatalogue.DischargeLineTemperature, 110, UnitOfMeasure.Celsius).Because(), StringComparison.Ordinal);
        Assert.DoesNotContain("CAUTION", call.Knowing(FactCatalogue.DischargeLineTemperature, 90, UnitOfMeasure.Celsius).Because(), StringComparison.Ordinal);
    }
}
