using System.Collections.Immutable;

namespace Assistant.Trade.Regulations;

/// <summary>Regular leak checks by what the charge would warm (Regulation (EU) 2024/573, articles 4 to 7).</summary>
public sealed record LeakCheckRegulation : Regulation
{
    /// <summary>From the smallest to the largest.</summary>
    public required ImmutableArray<LeakCheckStep> Steps { get; init; }

    public required string ChecksParagraph { get; init; }

    public required HermeticTerms Hermetic { get; init; }

    public required CompulsoryDetectionTerms Detection { get; init; }

    public required AfterRepairTerms AfterRepair { get; init; }

    public required RecordTerms Records { get; init; }

    public override bool AppliesTo(Appliance appliance, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(appliance);
        return IsValidOn(day) && FluorinatedCharge.Of(appliance) is { } charge && charge.Reaches(Steps[0].FromTonnes, Steps[0].FromKilogramsHfo);
    }
}

/// <param name="FromTonnes">At this many tonnes of CO2 equivalent and above, for equipment with any annex I gas.</param>
/// <param name="FromKilogramsHfo">At this mass and above, for equipment with annex II section 1 gases only.</param>
public sealed record LeakCheckStep(double FromTonnes, double FromKilogramsHfo, int EveryMonths, int EveryMonthsWithDetection);

public sealed record HermeticTerms(string Paragraph, double ExemptBelowTonnes, double ExemptBelowKilogramsHfo);

public sealed record CompulsoryDetectionTerms(string Paragraph, double CompulsoryFromTonnes, double CompulsoryFromKilogramsHfo);

/// <param name="NotBeforeRunningHours">The check after a repair is worth nothing before the equipment has run this long.</param>
public sealed record AfterRepairTerms(string Paragraph, int NotBeforeRunningHours, int WithinMonths);
