using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>Ice shuts the coil: nothing on the refrigerant side is judged through it.</summary>
internal static class CoilIced
{
    public static FaultRule Rule { get; } = new(
        FaultCode.CoilIced,
        "common practice",
        [CautionCode.IceRemoval, CautionCode.LockOut, CautionCode.MovingFan],
        [FactCatalogue.CoilIce],
        Between(SuperheatExcess, SuperheatLimits.IcedLow, SuperheatLimits.LittleAirHigh, SuperheatLimits.Scatter),
        AtLeast(TdShare, CoilLimits.IcedTd, CoilLimits.IcedTdScatter),
        AtLeast(AirShare, CoilLimits.IcedAirFall, CoilLimits.AirScatter),
        AtLeast(BoxOverSetpoint, RoomLimits.NotUnder, RoomLimits.RoomScatter).Neutral(),
        Sees(SightGlass, Weights.GlassThroughIce, Clear),
        Sees(CoilIce, Weights.Ice, Blocked).Proving());
}
