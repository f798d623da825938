using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Assistant.Trade.Regulations;

/// <summary>A rule with its source and dates; the figures stand in the derived records, the texts in shared/regulations.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "shape")]
[JsonDerivedType(typeof(LeakRepairRegulation), "leak-repair")]
[JsonDerivedType(typeof(LeakDetectionRegulation), "leak-detection")]
[JsonDerivedType(typeof(LeakCheckRegulation), "leak-checks")]
[JsonDerivedType(typeof(ServiceGasRegulation), "service-gas")]
public abstract record Regulation
{
    /// <summary>The rule's id, which is the name of its file.</summary>
    public required string Rule { get; init; }

    public required string Title { get; init; }

    public required Jurisdiction Jurisdiction { get; init; }

    /// <summary>Where the text stands, such as "40 CFR 82.157".</summary>
    public required string Source { get; init; }

    public required SourceBasis Basis { get; init; }

    /// <summary>The day the text was last read or recalled.</summary>
    public required DateOnly DateRead { get; init; }

    public required DateOnly ValidFrom { get; init; }

    /// <summary>The last day it holds; null while no end is known.</summary>
    public required DateOnly? ValidTo { get; init; }

    /// <summary>True where a revision was under way on <see cref="DateRead"/>.</summary>
    public required bool UnderRevision { get; init; }

    /// <summary>What was read, what recalled, what is left out.</summary>
    public required string Note { get; init; }

    /// <summary>For each figure whether it was read or is recalled, and where it stands.</summary>
    public required ImmutableArray<FigureSource> Figures { get; init; }

    public bool IsValidOn(DateOnly day) => day >= ValidFrom && (ValidTo is null || day <= ValidTo);

    /// <summary>Whether the rule holds for this appliance on this day, dates included.</summary>
    public abstract bool AppliesTo(Appliance appliance, DateOnly day);
}

/// <summary>Where one figure of a rule comes from.</summary>
/// <param name="Figure">Its key in the rule's file, such as "repair.withinDays"; "repair" stands for all figures under it.</param>
/// <param name="Source">The place in the text.</param>
public sealed record FigureSource(string Figure, SourceBasis Basis, string Source);
