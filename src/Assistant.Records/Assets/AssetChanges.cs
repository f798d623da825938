using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Readings;
using Assistant.Trade.Facts;

namespace Assistant.Records.Assets;

/// <summary>What is no longer on a piece of equipment as it was when the visit before opened.</summary>
public static class AssetChanges
{
    // What people turn and set: read anew on each visit, and of the equipment all the same.
    private static readonly Fact[] Settings = [FactCatalogue.Setpoint, FactCatalogue.Differential];

    /// <summary>The details changed since the last visit opened, and the settings that it read otherwise than the one before it; each with its value then and now.</summary>
    public static ImmutableArray<DetailChanged> Since(AssetHistory history, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(history);
        var visits = history.Visits.Where(v => v.OpenedAt <= at).ToList();
        if (visits.Count == 0)
        {
            return [];
        }

        var details = history.Changes.Where(c => c.Before is not null && c.At >= visits[0].OpenedAt && c.At <= at)
            .GroupBy(c => c.Name, StringComparer.Ordinal)
            .Select(c => new DetailChanged(c.Key, c.First().Before!, c.Last().Text))
            .Where(c => c.Then != c.Now);
        var settings = from setting in Settings
                       let now = Text(visits[0], setting)
                       let then = visits.Skip(1).Select(v => Text(v, setting)).FirstOrDefault(t => t is not null)
                       where now is not null && then is not null && now != then
                       select new DetailChanged(setting.Name, then, now);
        return [.. details, .. settings];
    }

    private static string? Text(PastVisit visit, Fact fact) =>
        visit.Readings.LastOrDefault(r => r.Fact == fact.Name && r.Standing == ReadingStanding.Counts) is { } reading
            ? AssetFacts.TextOf(new FactTaken(reading.Fact, reading.Value, reading.Unit, reading.Word, reading.Place, null) { At = reading.At, By = reading.By })
            : null;
}
