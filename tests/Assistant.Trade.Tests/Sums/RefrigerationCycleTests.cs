using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Trade.Tests.Sums;

public sealed class RefrigerationCycleTests
{
    // R-134a, 0.14 MPa and -10 degC in, 0.8 MPa and 50 degC out, liquid at 26 degC: work 40.33, cooling 158.53 kJ/kg.
    // Cengel and Boles, Thermodynamics, the actual vapour-compression example; from memory.
    private static readonly FactSet Textbook = FactSet.Of(
        new Observation(FactCatalogue.Refrigerant, "R134a"),
        new Reading(FactCatalogue.SuctionPressure, 140, UnitOfMeasure.KilopascalAbsolute),
        new Reading(FactCatalogue.DischargePressure, 800, UnitOfMeasure.KilopascalAbsolute),
        new Reading(FactCatalogue.SuctionLineTemperatureAtCompressor, -10, UnitOfMeasure.Celsius),
        new Reading(FactCatalogue.DischargeLineTemperature, 50, UnitOfMeasure.Celsius),
        new Reading(FactCatalogue.LiquidLineTemperature, 26, UnitOfMeasure.Celsius));

    [Fact]
    public void The_textbook_cycle_has_its_work_and_its_cooling()
    {
        var points = RefrigerationCycle.Measured(Textbook)!.Points;
        Assert.Equal(
            [CycleCorner.CompressorInlet, CycleCorner.CompressorOutlet, CycleCorner.LiquidLine, CycleCorner.EvaporatorInlet],
            points.Select(p => p.Corner));
        Assert.Equal([140_000, 800_000, 800_000, 140_000], points.Select(p => Math.Round(p.Pressure.Pascals)));
        Assert.All(points, p => Assert.False(p.IsAssumed));
        Assert.Equal(40.33, (points[1].Enthalpy - points[0].Enthalpy).KilojoulesPerKilogram, 0.3);
        Assert.Equal(158.53, (points[0].Enthalpy - points[3].Enthalpy).KilojoulesPerKilogram, 0.5);
        Assert.Equal(points[2].Enthalpy, points[3].Enthalpy);
    }

    [Fact]
    public void A_line_that_was_not_read_is_reckoned_and_marked()
    {
        var facts = Textbook.Without(FactCatalogue.DischargeLineTemperature).Without(FactCatalogue.LiquidLineTemperature);
        Assert.Equal([false, true, true, true], RefrigerationCycle.Measured(facts)!.Points.Select(p => p.IsAssumed));
    }

    [Fact]
    public void Without_a_refrigerant_or_a_pressure_there_is_no_cycle()
    {
        Assert.Null(RefrigerationCycle.Measured(Textbook.Without(FactCatalogue.Refrigerant)));
        Assert.Null(RefrigerationCycle.Measured(Textbook.Without(FactCatalogue.SuctionPressure)));
        Assert.Null(RefrigerationCycle.Measured(Textbook.Without(FactCatalogue.DischargePressure)));
    }

    // 2 degC less a TD of 6 K is -4 degC; 25 degC and a split of 15 K make 40 degC, R-134a 1016.6 kPa (ASHRAE Handbook, from memory).
    [Fact]
    public void The_design_cycle_stands_at_setpoint_less_td_and_ambient_plus_split()
    {
        var points = RefrigerationCycle.Design(Record(25))!.Points;
        Assert.Equal(252_700, points[0].Pressure.Pascals, 300.0);
        Assert.Equal(1_016_600, points[1].Pressure.Pascals, 300.0);
        Assert.All(points, p => Assert.True(p.IsAssumed));
    }

    [Fact]
    public void In_the_cold_the_design_head_is_the_one_that_is_held() =>
        Assert.Equal(770_200, RefrigerationCycle.Design(Record(0))!.Points[1].Pressure.Pascals, 800.0);

    // R-134a liquid of 40 degC less 5 degF is 37.2 degC: 252.3 kJ/kg (ASHRAE Handbook - Fundamentals, from memory: 249.0 at 35, 256.4 at 40).
    [Fact]
    public void The_design_liquid_is_a_little_below_its_bubble_point() =>
        Assert.Equal(252.3, RefrigerationCycle.Design(Record(25))!.Points[2].Enthalpy.KilojoulesPerKilogram, 0.3);

    // A TD of 10 degF and a split of 25: 2 degC less 5.6 K, 25 degC and 13.9 K.
    [Fact]
    public void Without_a_plate_the_middle_of_the_usual_ranges_is_taken()
    {
        var points = RefrigerationCycle.Design(Record(25).Without(FactCatalogue.DesignEvaporatorTd).Without(FactCatalogue.DesignCondenserSplit))!.Points;
        var table = Given.Refrigerant("R134a").Saturation;
        Assert.Equal(-3.56, table.DewTemperature(points[0].Pressure).Degrees, 0.01);
        Assert.Equal(38.89, table.DewTemperature(points[1].Pressure).Degrees, 0.01);
    }

    [Fact]
    public void The_unit_s_gauge_and_line_go_before_those_at_the_evaporator()
    {
        var both = Textbook.With(new Reading(FactCatalogue.SuctionPressureAtEvaporator, 160, UnitOfMeasure.KilopascalAbsolute))
            .With(new Reading(FactCatalogue.SuctionLineTemperatureAtBulb, -5, UnitOfMeasure.Celsius));
        Assert.Equal(RefrigerationCycle.Measured(Textbook)!.Points[0], RefrigerationCycle.Measured(both)!.Points[0]);

        var room = both.Without(FactCatalogue.SuctionPressure).Without(FactCatalogue.SuctionLineTemperatureAtCompressor);
        var inlet = RefrigerationCycle.Measured(room)!.Points[0];
        Assert.Equal(160_000, inlet.Pressure.Pascals, 1e-6);
        Assert.False(inlet.IsAssumed);
    }

    [Fact]
    public void The_dome_spans_the_whole_table()
    {
        var dome = SaturationDome.Of(Given.Refrigerant("R134a"), 3);
        var table = Given.Refrigerant("R134a").Saturation;
        Assert.Equal(table.DewPressures.Lowest.Pascals, dome.Dew[0].Pressure.Pascals, 1e-6);
        Assert.Equal(table.DewPressure(new(12.5)).Pascals, dome.Dew[1].Pressure.Pascals, 1e-6);
        Assert.Equal(table.DewPressures.Highest.Pascals, dome.Dew[2].Pressure.Pascals, 1e-6);
        Assert.Throws<ArgumentOutOfRangeException>(() => SaturationDome.Of(Given.Refrigerant("R134a"), 1));
    }

    [Fact]
    public void The_dome_rises_from_cold_liquid_to_vapour_of_more_enthalpy_at_no_more_pressure()
    {
        var dome = SaturationDome.Of(Given.Refrigerant("R448A"), 50);
        Assert.Equal((50, 50), (dome.Bubble.Length, dome.Dew.Length));
        Assert.All(dome.Bubble.Zip(dome.Dew), pair => Assert.True(pair.First.Enthalpy < pair.Second.Enthalpy && pair.First.Pressure >= pair.Second.Pressure));
        Assert.True(dome.Bubble[^1].Pressure > dome.Bubble[0].Pressure);
    }

    private static FactSet Record(double ambient) => FactSet.Of(
        new Observation(FactCatalogue.Refrigerant, "R134a"),
        new Reading(FactCatalogue.Setpoint, 2, UnitOfMeasure.Celsius),
        new Reading(FactCatalogue.DesignEvaporatorTd, 6, UnitOfMeasure.KelvinDifference),
        new Reading(FactCatalogue.DesignCondenserSplit, 15, UnitOfMeasure.KelvinDifference),
        new Reading(FactCatalogue.HeadPressureControlSetting, 30, UnitOfMeasure.Celsius),
        new Reading(FactCatalogue.AmbientTemperature, ambient, UnitOfMeasure.Celsius));
}
