using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Questions;

/// <summary>What a visit read more than once, which the facts of today alone do not show.</summary>
/// <param name="Vacuum">Since the pump was shut off, in the order of time.</param>
/// <param name="Box">Box temperatures, in the order of time.</param>
/// <param name="TestPressureSet">The first pressure of a nitrogen hold, or null.</param>
/// <param name="TestGasSet">The gas temperature at that time, or null.</param>
public sealed record VisitCourse(
    ImmutableArray<VacuumReading> Vacuum,
    ImmutableArray<BoxReading> Box,
    Reading? TestPressureSet,
    Reading? TestGasSet)
{
    public static VisitCourse None { get; } = new([], [], null, null);
}
