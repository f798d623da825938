using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Trade.Tests.Sums;

/// <summary>R-448A at 90 degF: 181.5 psig dew, 210.9 bubble, the trade's own figures.</summary>
public sealed class HeldHeadTests
{
    [Fact]
    public void Degrees_are_dew_unless_the_record_says_bubble()
    {
        var facts = Set(90, UnitOfMeasure.Fahrenheit);
        Assert.Equal(90, Held(facts)!.Value, 0.01);
        Assert.Equal(90, Held(facts.With(new Observation(FactCatalogue.SaturationBasis, "dew")))!.Value, 0.01);
        Assert.Equal(Held(Set(210.9, UnitOfMeasure.Psig))!.Value, Held(facts.With(new Observation(FactCatalogue.SaturationBasis, "bubble")))!.Value, 0.05);
    }

    [Fact]
    public void A_pressure_is_its_dew_point_at_the_site()
    {
        Assert.Equal(90, Held(Set(181.5, UnitOfMeasure.Psig))!.Value, 0.05);

        // At 1600 m the same gauge stands 2.6 psi lower, about a degree.
        Assert.InRange(Held(Set(181.5, UnitOfMeasure.Psig).With(new Reading(FactCatalogue.Altitude, 1600, UnitOfMeasure.Meter)))!.Value, 88.8, 89.5);
    }

    [Fact]
    public void Without_a_control_or_a_setting_nothing_is_held()
    {
        Assert.Null(Held(Set(90, UnitOfMeasure.Fahrenheit).With(new Observation(FactCatalogue.HeadPressureControl, "none"))));
        Assert.Null(Held(FactSet.Empty));
        Assert.NotNull(Held(Set(90, UnitOfMeasure.Fahrenheit).With(new Observation(FactCatalogue.HeadPressureControl, "valve"))));
    }

    private static FactSet Set(double value, UnitOfMeasure unit) => FactSet.Of(new Reading(FactCatalogue.HeadPressureControlSetting, value, unit));

    private static double? Held(FactSet facts) => (HeldHead.Of(facts, Given.Refrigerant("R448A"))?.Degrees * 1.8) + 32;
}
