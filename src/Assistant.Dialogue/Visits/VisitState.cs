using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Visits;

/// <summary>Today's state of a visit: the fold of its events. Immutable; <see cref="Apply"/> gives the next one.</summary>
public sealed record VisitState
{
    public static VisitState Empty { get; } = new();

    /// <summary>The number of events folded in: the version an append is checked against.</summary>
    public int Version { get; init; }

    public UnitSystem Units { get; init; } = UnitSystem.Us;

    public string? Site { get; init; }

    public string? AssetId { get; init; }

    /// <summary>What is known now: the record's facts, overlaid by what was taken.</summary>
    public FactSet Facts { get; init; } = FactSet.Empty;

    /// <summary>The next state. An event of the same log always gives the same state.</summary>
    public VisitState Apply(VisitEvent happened) => this with { Version = Version + 1 };

    public static VisitState Fold(IEnumerable<VisitEvent> events) => events.Aggregate(Empty, (state, happened) => state.Apply(happened));
}
