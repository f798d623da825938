using System.Collections.Immutable;
using UnitsNet;

namespace Assistant.Trade.Regulations;

/// <summary>A rule of the kind of 40 CFR 82.157 and 84.106: a leak rate over a threshold sets dates for repair, proof and report.</summary>
public sealed record LeakRepairRegulation : Regulation
{
    public required LeakRepairScope Covers { get; init; }

    public required LeakRateTerms LeakRate { get; init; }

    public required RepairTerms Repair { get; init; }

    public required Citation InitialVerification { get; init; }

    public required FollowUpTerms FollowUpVerification { get; init; }

    public required InspectionTerms Inspections { get; init; }

    public required PlanTerms Plan { get; init; }

    public required AnnualReportTerms AnnualReport { get; init; }

    public required RecordTerms Records { get; init; }

    public override bool AppliesTo(Appliance appliance, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(appliance);
        return IsValidOn(day)
            && Limits.AtLeast(appliance.FullCharge.Pounds, Covers.FullChargeFromPounds)
            && !(Covers.ExceptResidentialAndLightCommercial && appliance.IsResidentialOrLightCommercial)
            && Covers.Includes(GwpTable.Shipped, appliance.Composition);
    }
}

/// <summary>Which appliances a leak repair rule covers.</summary>
/// <param name="GwpOver">For <see cref="CoveredSubstances.HfcsAndSubstitutes"/>: a substitute counts above this value, not at it.</param>
/// <param name="FullChargeFromPounds">At this full charge and above.</param>
public sealed record LeakRepairScope(CoveredSubstances Substances, double? GwpOver, double FullChargeFromPounds, bool ExceptResidentialAndLightCommercial)
{
    internal bool Includes(GwpTable table, ImmutableArray<Refrigerants.RefrigerantComponent> composition) => Substances switch
    {
        CoveredSubstances.OzoneDepleting => table.Contains(composition, SubstanceKind.OzoneDepleting),
        _ => table.IsHfcOrSubstituteOver(composition, GwpOver ?? 0),
    };
}

public enum CoveredSubstances
{
    /// <summary>Class I and class II substances and blends with them.</summary>
    OzoneDepleting,

    /// <summary>Hydrofluorocarbons, and what stands in for them above a global warming potential.</summary>
    HfcsAndSubstitutes,
}

/// <param name="OverPercent">A rate above these sets the dates running, a rate at them does not.</param>
/// <param name="AdditionsCountFrom">Additions before this day do not count; null where all do.</param>
/// <param name="SeasonalWithinMonths">The longest time between a seasonal removal and its return.</param>
public sealed record LeakRateTerms(string Paragraph, UsePercents OverPercent, DateOnly? AdditionsCountFrom, int SeasonalWithinMonths);

public sealed record UsePercents(double CommercialRefrigeration, double IndustrialProcess, double ComfortCooling, double Other)
{
    public Ratio For(ApplianceUse use) => Ratio.FromPercent(use switch
    {
        ApplianceUse.CommercialRefrigeration => CommercialRefrigeration,
        ApplianceUse.IndustrialProcess => IndustrialProcess,
        ApplianceUse.ComfortCooling => ComfortCooling,
        _ => Other,
    });
}

public sealed record Citation(string Paragraph);

/// <param name="WithinDays">From the addition that showed the leak.</param>
public sealed record RepairTerms(string Paragraph, int WithinDays, int WithinDaysWithProcessShutdown);

/// <param name="WithinDays">From the initial verification, or from normal running where that came later.</param>
public sealed record FollowUpTerms(string Paragraph, int WithinDays);

/// <param name="QuarterlyUses">The uses inspected every three months from <paramref name="QuarterlyFromPounds"/>; all others once a calendar year.</param>
/// <param name="UntilMonthsBelow">Inspections end when the rate stayed at or under the threshold that long.</param>
public sealed record InspectionTerms(string Paragraph, double QuarterlyFromPounds, ImmutableArray<ApplianceUse> QuarterlyUses, int UntilMonthsBelow);

/// <param name="WithinDays">From the day the repair was shown not to have held.</param>
/// <param name="AgainWithinMonths">A rate over the threshold again within this time of the repair's proof shows that it did not hold.</param>
public sealed record PlanTerms(string Paragraph, int WithinDays, int CompletedWithinMonths, int AgainWithinMonths);

/// <param name="FromPercentOfCharge">Leaked in a calendar year, at this share and above.</param>
public sealed record AnnualReportTerms(string Paragraph, double FromPercentOfCharge, int DueMonth, int DueDay);

public sealed record RecordTerms(string Paragraph, int Years);
