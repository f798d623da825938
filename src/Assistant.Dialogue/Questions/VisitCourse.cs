using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;
using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Dialogue.Questions;

/// <summary>What a visit read more than once, which the facts of today alone do not show.</summary>
/// <param name="Vacuum">Since the pump was shut off, in the order of time.</param>
/// <param name="Box">Box temperatures, in the order of time.</param>
/// <param name="TestPressureSet">The pressure a nitrogen hold began with, where it was read again since; otherwise null.</param>
/// <param name="TestGasSet">The gas temperature at that time, or null.</param>
public sealed record VisitCourse(
    ImmutableArray<VacuumReading> Vacuum,
    ImmutableArray<BoxReading> Box,
    Reading? TestPressureSet,
    Reading? TestGasSet)
{
    // Less of a fall is the gauge's own play; more means that the pump is at work again and a new course begins.
    private const double PumpedDown = 0.95;

    // More of a rise means that gas was let in and a new hold begins.
    private const double FilledUp = 1.1;

    public static VisitCourse None { get; } = new([], [], null, null);

    /// <summary>The courses of a visit. What a mended fault made out of date is left out.</summary>
    public static VisitCourse Of(VisitState state)
    {
        var pressures = Entries(state, FactCatalogue.TestPressure);
        var begin = LastBeginning(pressures, (entry, before) => entry.Reading.Canonical > before.Reading.Canonical * FilledUp);
        var set = pressures.Length - begin > 1 ? pressures[begin] : null;
        return new(
            VacuumSinceIsolation(state),
            [.. Entries(state, FactCatalogue.BoxTemperature).Select(e => new BoxReading(Duration.FromSeconds((e.At - state.OpenedAt).TotalSeconds), new(e.Reading.Canonical)))],
            set?.Reading,
            set is null ? null : GasAt(state, set, pressures[begin + 1]));
    }

    private static ImmutableArray<VacuumReading> VacuumSinceIsolation(VisitState state)
    {
        var entries = Entries(state, FactCatalogue.VacuumLevel);
        var begin = LastBeginning(entries, (entry, before) => entry.Reading.Canonical < before.Reading.Canonical * PumpedDown);
        var said = Entries(state, FactCatalogue.ElapsedTime).ToLookup(e => e.At, e => e.Reading.Canonical);
        var course = ImmutableArray.CreateBuilder<VacuumReading>();
        foreach (var entry in entries.Skip(begin))
        {
            // "450 after ten minutes" says the time; otherwise the clock does.
            var seconds = said.Contains(entry.At) ? said[entry.At].Last() : (entry.At - entries[begin].At).TotalSeconds;
            if (course.Count == 0 || seconds > course[^1].Elapsed.Seconds)
            {
                course.Add(new(Duration.FromSeconds(seconds), new(entry.Reading.Canonical)));
            }
        }

        return course.ToImmutable();
    }

    // The temperature said with the pressure, else the one read before the pressure was read again.
    private static Reading? GasAt(VisitState state, Entry set, Entry next)
    {
        var gas = Entries(state, FactCatalogue.TestGasTemperature);
        return (gas.FirstOrDefault(g => g.At == set.At) ?? gas.FirstOrDefault(g => g.Number > set.Number && g.Number < next.Number))?.Reading;
    }

    // The last entry that begins anew against the one before it; the first where none does.
    private static int LastBeginning(ImmutableArray<Entry> entries, Func<Entry, Entry, bool> anew) =>
        Enumerable.Range(1, Math.Max(0, entries.Length - 1)).LastOrDefault(i => anew(entries[i], entries[i - 1]));

    private static ImmutableArray<Entry> Entries(VisitState state, Fact fact)
    {
        var history = state.History.GetValueOrDefault(fact, []);
        var outdated = history.FindLastIndex(e => e.Value is null);
        return [.. history.Skip(outdated + 1).Where(e => e.Value is Reading).Select(e => new Entry(e.Number, e.At, (Reading)e.Value!))];
    }

    private sealed record Entry(int Number, DateTimeOffset At, Reading Reading);
}
