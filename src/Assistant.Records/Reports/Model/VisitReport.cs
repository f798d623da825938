using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Plots;
using Assistant.Records.Readings;
using Assistant.Trade.Ledgers;
using Assistant.Trade.Quantities;

namespace Assistant.Records.Reports.Model;

/// <summary>All that a visit left on record, read from its log. Amounts and words as they were said.</summary>
/// <param name="Unit">What people call the equipment, or null.</param>
/// <param name="People">Who said something on the visit, in the order they first did.</param>
/// <param name="Verdicts">Every verdict said and not taken back; the last one stands.</param>
/// <param name="Mended">The faults put right.</param>
/// <param name="Plotted">What its plots are drawn from: the cycle as it was read, at the verdict where it was not read again after a repair.</param>
public sealed record VisitReport(
    string VisitId,
    string Site,
    string? AssetId,
    string? Unit,
    UnitSystem Units,
    DateTimeOffset OpenedAt,
    DateTimeOffset? ClosedAt,
    string? Outcome,
    string? HandedTo,
    ImmutableArray<string> People,
    ImmutableArray<LoggedReading> Readings,
    ImmutableArray<VerdictGiven> Verdicts,
    ImmutableArray<FaultMended> Mended,
    ImmutableArray<CautionGiven> Cautions,
    ImmutableArray<CylinderUsed> Cylinders,
    ImmutableArray<FollowUpNoted> FollowUps,
    ImmutableArray<ReportedPicture> Pictures,
    ImmutableArray<MessageHeard> Messages,
    PlottedVisit Plotted,
    ReportBasis Basis)
{
    /// <summary>The accounts of the cylinders used on this visit, over all visits up to its last word.</summary>
    public LedgerBalances? Balances { get; init; }

    /// <summary>The leaks found.</summary>
    public ImmutableArray<LeakFound> Leaks { get; init; } = [];

    /// <summary>True where a leak was repaired on this visit, found on it or on an earlier one.</summary>
    public bool IsLeakRepaired { get; init; }

    /// <summary>What was told of a cylinder's use and never told whole, so that it is in no account; null where nothing.</summary>
    public CylinderNoted? OpenCylinder { get; init; }

    /// <summary>True where something was put right and what was read afresh since shows no fault.</summary>
    public bool IsSoundSince { get; init; }

    /// <summary>What the walks' judgements came to, in the order they were said.</summary>
    public ImmutableArray<JudgementGiven> Judgements { get; init; } = [];

    /// <summary>The equipment's leak rate, or null where charge or additions are not known.</summary>
    public LeakAccount? Leak { get; init; }
}

/// <summary>A picture of the visit; without content where it is no longer kept.</summary>
/// <param name="Width">In pixels.</param>
/// <param name="Height">In pixels.</param>
public sealed record ReportedPicture(string Id, DateTimeOffset At, string By, string Caption, byte[]? Jpeg, int Width, int Height);

/// <summary>What a report rests on, so that it can be checked later.</summary>
/// <param name="RefrigerantData">The version of the refrigerant tables.</param>
/// <param name="LogVersion">How many events the log held.</param>
/// <param name="LogHead">The hash of the last of them, in lower-case hexadecimal: the log can not be changed later without another head.</param>
public sealed record ReportBasis(string RefrigerantData, int LogVersion, string LogHead);
