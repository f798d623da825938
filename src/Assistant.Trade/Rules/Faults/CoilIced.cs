using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
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
        Between(SuperheatExcess, -3.5, 2, 0.7),
        AtLeast(TdShare, 1.5, 0.15),
        AtLeast(AirShare, 0.3, 0.06),
        AtLeast(BoxOverSetpoint, -1, 1).Neutral(),
        Sees(SightGlass, 3, Clear),
        Sees(CoilIce, 16, Blocked).Proving());
}
