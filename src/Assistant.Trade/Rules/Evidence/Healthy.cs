using System.Collections.Immutable;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;

namespace Assistant.Trade.Rules.Evidence;

/// <summary>What a sound, running plant shows. A fault is expected to show the same wherever its own rule says nothing else.</summary>
internal static class Healthy
{
    public static ImmutableArray<Expectation> Expectations { get; } =
    [
        Between(SuperheatExcess, -2.2, 2.8, 0.7),
        Between(Subcooling, 1.7, 4.8, 0.4),
        Between(HeadExcess, -3, 2.5, 0.7),
        AtLeast(SplitShare, 0.72, 0.08),
        AtLeast(HeadOverSetting, -3, 0.7),
        AtLeast(ColdSplitExcess, 3, 1),
        Between(TdShare, 0.85, 1.3, 0.1),
        Between(AirShare, 0.2, 0.6, 0.06),
        AtMost(DrierDrop, 1.0, 0.3),
        AtMost(LiquidLineDrop, 2.5, 0.8),
        Between(StandingExcess, -1.0, 1.0, 0.3),
        AtLeast(CompressorSuperheat, 7, 1.5),
        AtLeast(CurrentShare, 0.5, 0.1),
        Between(CompressorEfficiency, 0.58, 0.85, 0.04),
        AtMost(BoxOverSetpoint, 5, 1),
        AtMost(ThermometerGap, 1.3, 0.4),
        AtMost(SettingExcess, 1.2, 0.4),
        AtLeast(HighSideOverAmbient, 4, 1),
        Sees(SightGlass, 9, 0),
        Sees(CoilIce, 16, 0, 1),
        Sees(EvaporatorFans, 10, 0),
        AtMost(CondenserObstruction, 0.5, 0.3),
        Sees(Compressor, 14, 0, 2),
        Sees(Calling, 14, 0),
        Sees(Solenoid, 12, 0),
        Sees(Defrost, 12, 1),
        Sees(Door, 2, 0),
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
