namespace Assistant.Trade.Regulations;

/// <summary>What a rule has to say of an appliance.</summary>
public enum RegulationCode
{
    LeakRateOver,
    LeakRateWithin,
    SeasonalVariance,

    /// <summary>Put in as seasonal, but no removal on record bears it: counts as leaked.</summary>
    SeasonalNotProven,
    RepairBy,

    /// <summary>Due by its date, and in any case before refrigerant is added.</summary>
    InitialVerificationBy,
    FollowUpVerificationBy,
    InspectQuarterlyBy,
    InspectYearlyBy,
    RetrofitOrRetirementPlanBy,
    AnnualReportBy,
    KeepRecordsUntil,
    OneMethodForTheFacility,
    LeakDetectionBy,
    LeakCheckBy,

    /// <summary>A check is asked for, but neither a check nor the installation is on record to count from.</summary>
    LeakCheckUndated,
    HermeticExempt,
    LeakDetectionCompulsory,
    CheckAfterRepairBy,
    VirginGasBanned,
}
