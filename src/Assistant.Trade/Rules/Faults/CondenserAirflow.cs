using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>The condenser cannot give off its heat: split well over the design with a dirty coil or a fan out, subcooling as usual.</summary>
internal static class CondenserAirflow
{
    public static FaultRule Rule { get; } = new(
        FaultCode.CondenserAirflow,
        "trade practice; directions after Rossi and Braun 1997, HVAC&R Research 3(1)",
        [CautionCode.LockOut, CautionCode.MovingFan, CautionCode.Electrical, CautionCode.Ladder],
        [FactCatalogue.CondenserCoil, FactCatalogue.CondenserFans],
        AtLeast(HeadExcess, HeadLimits.WellOver, HeadLimits.Scatter).Proving(),
        AtLeast(HeadOverSetting, HeadLimits.AtSetting, HeadLimits.Scatter),
        Between(Subcooling, SubcoolingLimits.SoundLow, SubcoolingLimits.UsualHigh, SubcoolingLimits.UnsteadyScatter),
        // At such a head a glass proves nothing: it is judged when the coil is clean.
        Allows(SightGlass, Weights.GlassSpeaks, Clear, Flashing),
        AtLeast(CondenserObstruction, HeadLimits.Obstructed, HeadLimits.CleanScatter).Proving());
}
