using System.Collections.Immutable;
using Assistant.Dialogue.Questions;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using UnitsNet;

namespace Assistant.Dialogue.Turns;

/// <summary>What a visit read more than once, with the times between, taken from its history.</summary>
internal static class VisitCourses
{
    /// <summary>The course of a visit; times count from the first reading of each.</summary>
    public static VisitCourse Of(VisitState state) => new(
        [.. Readings(state, FactCatalogue.VacuumLevel).Select(r => new Trade.Sums.VacuumReading(r.Since, new AbsolutePressure(r.Reading.Canonical)))],
        [.. Readings(state, FactCatalogue.BoxTemperature).Select(r => new Trade.Sums.BoxReading(r.Since, new CelsiusTemperature(r.Reading.Canonical)))],
        First(state, FactCatalogue.TestPressure),
        First(state, FactCatalogue.TestGasTemperature));

    private static IEnumerable<(Reading Reading, Duration Since)> Readings(VisitState state, Fact fact)
    {
        var entries = state.History.GetValueOrDefault(fact, []);
        foreach (var entry in entries)
        {
            if (entry.Value is Reading reading)
            {
                yield return (reading, Duration.FromSeconds((entry.At - entries[0].At).TotalSeconds));
            }
        }
    }

    // A hold has begun only where it was read again since.
    private static Reading? First(VisitState state, Fact fact) =>
        state.History.GetValueOrDefault(fact, []) is { Count: > 1 } entries ? entries[0].Value as Reading : null;
}
