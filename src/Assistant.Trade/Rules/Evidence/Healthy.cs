using System.Collections.Immutable;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Evidence;

/// <summary>What a sound, running plant shows. A fault is expected to show the same wherever its own rule says nothing else.</summary>
internal static class Healthy
{
    public static ImmutableArray<Expectation> Expectations { get; } =
    [
        Between(SuperheatExcess, SuperheatLimits.SoundLow, SuperheatLimits.SoundHigh, SuperheatLimits.Scatter),
        Between(Subcooling, SubcoolingLimits.SoundLow, SubcoolingLimits.SoundHigh, SubcoolingLimits.Scatter),
        Between(HeadExcess, HeadLimits.SoundLow, HeadLimits.SoundHigh, HeadLimits.SoundScatter),
        AtLeast(SplitShare, HeadLimits.SoundSplit, HeadLimits.SplitScatter),
        AtLeast(HeadOverSetting, HeadLimits.Droop, HeadLimits.SoundScatter),
        AtLeast(ColdSplitExcess, HeadLimits.FloodedSplit, HeadLimits.ColdScatter),
        Between(TdShare, CoilLimits.SoundTdLow, CoilLimits.SoundTdHigh, CoilLimits.TdScatter),
        Between(AirShare, CoilLimits.SoundAirLow, CoilLimits.SoundAirHigh, CoilLimits.AirScatter),
        AtMost(DrierDrop, LiquidLineLimits.SoundDrier, LiquidLineLimits.SoundDrierScatter),
        AtMost(LiquidLineDrop, LiquidLineLimits.LineLoss, LiquidLineLimits.LineScatter),
        Between(StandingExcess, -StandingLimits.Agrees, StandingLimits.Agrees, StandingLimits.LevellingScatter),
        AtLeast(CompressorSuperheat, SuperheatLimits.WetAtCompressor, SuperheatLimits.SuctionLineScatter),
        AtLeast(CurrentShare, CompressorLimits.SoundCurrent, CompressorLimits.SoundCurrentScatter),
        Between(CompressorEfficiency, CompressorLimits.SoundWorkLow, CompressorLimits.SoundWorkHigh, CompressorLimits.WorkScatter),
        AtMost(BoxOverSetpoint, RoomLimits.AnyWarmth, RoomLimits.WarmthScatter),
        AtMost(ThermometerGap, RoomLimits.ThermometersAgree, RoomLimits.ThermometerScatter),
        AtMost(SettingExcess, RoomLimits.UsableSetting, RoomLimits.UsableSettingScatter),
        AtLeast(HighSideOverAmbient, StandingLimits.RunningOverAmbient, StandingLimits.Scatter),
        Sees(SightGlass, Weights.GlassSpeaks, Clear),
        Sees(CoilIce, Weights.Ice, NoIce, LightIce),
        Sees(EvaporatorFans, Weights.CoilFans, AllFans),
        AtMost(CondenserObstruction, HeadLimits.Obstructed, HeadLimits.DirtScatter),
        Sees(Compressor, Weights.CompressorSeen, Running, ShortCycling),
        Sees(Calling, Weights.Call, Yes),
        Sees(Solenoid, Weights.Solenoid, Yes),
        Sees(Defrost, Weights.Defrost, No),
        Sees(Door, Weights.Door, GoodDoor),
    ];

    private static readonly Expectation?[] BySymptom = Index();

    /// <summary>What a sound plant shows of this symptom; null where it may show anything.</summary>
    public static Expectation? Of(Symptom symptom) => BySymptom[(int)symptom];

    private static Expectation?[] Index()
    {
        var index = new Expectation?[SymptomTable.Count];
        foreach (var expectation in Expectations)
        {
            index[(int)expectation.Symptom] = expectation;
        }

        return index;
    }
}
