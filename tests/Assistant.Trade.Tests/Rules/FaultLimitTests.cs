using Assistant.Trade.Rules;
using Assistant.Trade.Rules.Evidence;
using static Assistant.Trade.Rules.FaultCode;

namespace Assistant.Trade.Tests.Rules;

/// <summary>Where a reading begins to speak against a fault: at the limit it does not, beyond it, by an error of what plants differ in, it does. The limits are common practice where nothing else is said.</summary>
public class FaultLimitTests
{
    // Kelvins. 2 K is 3.6 degF, 2.5 is 4.5, 3.5 is 6.3; 20 degF of superheat at the compressor is 11.1 K.
    [Theory]
    [InlineData(HeadPressureControlLow, nameof(Symptom.HeadExcess), -2, -1)]
    [InlineData(HeadPressureControlLow, nameof(Symptom.HeadOverSetting), -2.5, -1.5)]
    [InlineData(HeadPressureControlLow, nameof(Symptom.SuperheatExcess), -1, -2)]
    [InlineData(NoFault, nameof(Symptom.HeadOverSetting), -2.5, -3.5)]
    [InlineData(CoilIced, nameof(Symptom.BoxOverSetpoint), -1, -2.1)]
    [InlineData(CoilIced, nameof(Symptom.SuperheatExcess), -3.5, -4.3)]
    [InlineData(ExpansionValveOverfeeding, nameof(Symptom.CompressorSuperheat), 11.1, 13)]
    [InlineData(NoFault, nameof(Symptom.CompressorSuperheat), 7, 5)]
    [InlineData(Overcharge, nameof(Symptom.Subcooling), 5, 4.1)]
    [InlineData(Overcharge, nameof(Symptom.HeadExcess), 1, 0.1)]
    [InlineData(Noncondensables, nameof(Symptom.HeadExcess), 1, 0.1)]
    public void A_difference_of_temperature_fits_at_its_limit_and_speaks_against_the_fault_beyond(FaultCode fault, string symptom, double fits, double beyond) =>
        Speaks(fault, symptom, fits, beyond);

    // Shares of what plate and duty ask for; isentropic work to work taken.
    [Theory]
    [InlineData(NoFault, nameof(Symptom.TdShare), 0.8, 0.69)]
    [InlineData(NoFault, nameof(Symptom.TdShare), 1.2, 1.31)]
    [InlineData(NoFault, nameof(Symptom.SplitShare), 0.8, 0.71)]
    [InlineData(NoFault, nameof(Symptom.CompressorEfficiency), 0.6, 0.55)]
    [InlineData(EvaporatorAirflow, nameof(Symptom.TdShare), 1.25, 1.12)]
    [InlineData(EvaporatorAirflow, nameof(Symptom.AirShare), 0.53, 0.46)]
    public void A_share_fits_at_its_limit_and_speaks_against_the_fault_beyond(FaultCode fault, string symptom, double fits, double beyond) => Speaks(fault, symptom, fits, beyond);

    // Half of the coils that want air show all their fans turning: dirt on guards and blades.
    [Fact]
    public void Fans_that_all_turn_hardly_clear_a_coil_of_want_of_air() => Assert.InRange(Misfit(EvaporatorAirflow, nameof(Symptom.EvaporatorFans), 0), 0.1, 0.5);

    private static void Speaks(FaultCode fault, string symptom, double fits, double beyond)
    {
        Assert.Equal(0, Misfit(fault, symptom, fits), 3);
        Assert.True(Misfit(fault, symptom, beyond) >= 1);
    }

    private static double Misfit(FaultCode fault, string symptom, double value) => FaultRules.Of(fault).Expects(Enum.Parse<Symptom>(symptom))!.Value.Misfit(new(value, 0));
}
