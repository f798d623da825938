using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;
using BenchmarkDotNet.Attributes;

namespace Assistant.Benchmarks;

/// <summary>A whole assessment of a well-filled set of facts; it is made after every message.</summary>
[MemoryDiagnoser]
public class AssessmentBenchmarks
{
    private readonly FactSet winter = FactSet.Of(
    [
        new Observation(FactCatalogue.Refrigerant, "R404A"),
        new Observation(FactCatalogue.Application, "freezer"),
        new Observation(FactCatalogue.HeadPressureControl, "valve"),
        new Reading(FactCatalogue.HeadPressureControlSetting, 85, UnitOfMeasure.Fahrenheit),
        new Reading(FactCatalogue.DesignCondenserSplit, 18, UnitOfMeasure.FahrenheitDifference),
        new Reading(FactCatalogue.DesignEvaporatorTd, 10, UnitOfMeasure.FahrenheitDifference),
        new Reading(FactCatalogue.Setpoint, -5, UnitOfMeasure.Fahrenheit),
        new Reading(FactCatalogue.Differential, 3, UnitOfMeasure.FahrenheitDifference),
        new Reading(FactCatalogue.BoxTemperature, 2, UnitOfMeasure.Fahrenheit),
        new Reading(FactCatalogue.BoxTemperatureCheck, 2, UnitOfMeasure.Fahrenheit),
        new Observation(FactCatalogue.CallingForCooling, "yes"),
        new Observation(FactCatalogue.CoilIce, "distributor-end"),
        new Observation(FactCatalogue.EvaporatorFans, "all"),
        new Observation(FactCatalogue.SolenoidEnergised, "yes"),
        new Reading(FactCatalogue.SuctionLineTemperatureAtBulb, 0, UnitOfMeasure.Fahrenheit),
        new Reading(FactCatalogue.AmbientTemperature, 15, UnitOfMeasure.Fahrenheit),
        new Observation(FactCatalogue.Compressor, "running"),
        new Observation(FactCatalogue.CondenserFans, "all"),
        new Observation(FactCatalogue.CondenserCoil, "clean"),
        new Observation(FactCatalogue.SightGlass, "flashing"),
        new Reading(FactCatalogue.SuctionPressure, 4, UnitOfMeasure.Psig),
        new Reading(FactCatalogue.DischargePressure, 150, UnitOfMeasure.Psig),
        new Reading(FactCatalogue.LiquidLineTemperature, 71, UnitOfMeasure.Fahrenheit),
        new Reading(FactCatalogue.SuctionLineTemperatureAtCompressor, 20, UnitOfMeasure.Fahrenheit),
        new Reading(FactCatalogue.DischargeLineTemperature, 160, UnitOfMeasure.Fahrenheit),
    ]);

    // A setting in degrees on a blend with glide, its basis not told: the faults are ranked by the dew point and by the bubble point.
    private readonly FactSet blend = FactSet.Of(
    [
        new Observation(FactCatalogue.Refrigerant, "R448A"),
        new Observation(FactCatalogue.Application, "cooler"),
        new Observation(FactCatalogue.HeadPressureControl, "valve"),
        new Reading(FactCatalogue.HeadPressureControlSetting, 30, UnitOfMeasure.Celsius),
        new Reading(FactCatalogue.DesignCondenserSplit, 14, UnitOfMeasure.KelvinDifference),
        new Reading(FactCatalogue.Setpoint, 3, UnitOfMeasure.Celsius),
        new Reading(FactCatalogue.Differential, 2, UnitOfMeasure.KelvinDifference),
        new Reading(FactCatalogue.BoxTemperature, 7, UnitOfMeasure.Celsius),
        new Observation(FactCatalogue.CallingForCooling, "yes"),
        new Observation(FactCatalogue.CoilIce, "none"),
        new Observation(FactCatalogue.EvaporatorFans, "all"),
        new Reading(FactCatalogue.AmbientTemperature, 2, UnitOfMeasure.Celsius),
        new Observation(FactCatalogue.Compressor, "running"),
        new Observation(FactCatalogue.CondenserFans, "all"),
        new Observation(FactCatalogue.CondenserCoil, "clean"),
        new Observation(FactCatalogue.SightGlass, "clear"),
        new Reading(FactCatalogue.SuctionPressure, 2.7, UnitOfMeasure.Bar),
        new Reading(FactCatalogue.DischargePressure, 11.6, UnitOfMeasure.Bar),
        new Reading(FactCatalogue.LiquidLineTemperature, 21, UnitOfMeasure.Celsius),
        new Reading(FactCatalogue.SuctionLineTemperatureAtBulb, 2, UnitOfMeasure.Celsius),
    ]);

    [Benchmark]
    public Assessment WholeAssessment() => Assessor.Assess(winter);

    [Benchmark]
    public Assessment BlendWithGlide() => Assessor.Assess(blend);
}
