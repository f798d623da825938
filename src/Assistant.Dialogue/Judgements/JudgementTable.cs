using System.Collections.Frozen;

namespace Assistant.Dialogue.Judgements;

/// <summary>Every judgement a walk can name.</summary>
public static class JudgementTable
{
    private static readonly FrozenDictionary<string, Judgement> ByName = new Judgement[]
    {
        new VacuumDepthJudgement(),
        new VacuumDecayJudgement(),
        new TestPressureJudgement(),
        new NitrogenHoldJudgement(),
        new LeakPressureJudgement(),
        new SearchPressureJudgement(),
        new LeakAreasJudgement(),
        new LeakListJudgement(),
        new RepairPlanJudgement(),
        new SetpointFitJudgement(),
        new CallDueJudgement(),
        new DefrostFitJudgement(),
        new ProductJudgement(),
        new HeadControlTestJudgement(),
        new CylinderFeedJudgement(),
        new ChargePhaseJudgement(),
        new ChargePlanJudgement(),
        new ChargeStateJudgement(),
        new WinterChargeJudgement(),
        new SupplyVoltageJudgement(),
        new ValveReadyJudgement(),
        new ValveSuperheatJudgement(),
        new PullDownJudgement(),
        new FinalReadingsJudgement(),
        new CustomerSentenceJudgement(),
    }.ToFrozenDictionary(j => j.Name, StringComparer.Ordinal);

    public static IEnumerable<Judgement> All => ByName.Values.OrderBy(j => j.Name, StringComparer.Ordinal);

    /// <summary>The judgement of that name, or null.</summary>
    public static Judgement? Find(string name) => ByName.GetValueOrDefault(name);
}
