using System.Collections.Immutable;

namespace Assistant.Dialogue.Visits;

/// <summary>From here on bare numbers, and what is said, are in these units. What was taken before stands as it was.</summary>
/// <param name="Units">us or metric.</param>
public sealed record UnitsChosen(string Units) : VisitEvent;

/// <summary>"done" was said where the walk is not through, and it was asked whether the visit is to be closed.</summary>
public sealed record CloseQueried : VisitEvent;

/// <summary>What a walk begins changes the plant: what was read of these facts before no longer says how it is.</summary>
public sealed record ReadingsOutdated(ImmutableArray<string> Facts) : VisitEvent;
