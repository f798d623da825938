using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;
using Assistant.Dialogue.Visits;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Log;

public class EventJsonTests
{
    [Fact]
    public async Task Every_event_of_a_visit_reads_back_as_it_was_written()
    {
        await using var records = await TemporaryRecords.OpenAsync();
        await records.Log.AppendAsync(Invented.FirstAppend("v"));

        await records.Log.AppendAsync(new("v", 1, [.. InventedVisit.Events.Skip(1)]));

        var read = await records.Log.ReadAsync("v");
        Assert.Equal(
            InventedVisit.Events.Skip(1).Select(e => JsonSerializer.Serialize<VisitEvent>(e)),
            read.Skip(1).Select(e => JsonSerializer.Serialize(e)));
        Assert.Equal(Enumerable.Range(1, InventedVisit.Events.Count), read.Select(e => e.Number));
    }

    [Fact]
    public void Only_text_is_marked_personal_since_only_text_can_be_left_empty()
    {
        var marked = typeof(VisitEvent).GetCustomAttributes<JsonDerivedTypeAttribute>()
            .SelectMany(kind => kind.DerivedType.GetProperties())
            .Where(property => property.IsDefined(typeof(PersonalAttribute), inherit: true));

        Assert.All(marked, property => Assert.Equal(typeof(string), property.PropertyType));
    }

    [Fact]
    public void The_stored_kind_names_are_the_ones_that_were_released()
    {
        string[] released =
        [
            "visit-opened", "message-heard", "fact-taken", "fact-questioned", "clarification-asked", "event-withdrawn", "stop-reached",
            "stop-skipped", "stop-confirmed", "walk-started", "walk-finished", "verdict-given", "caution-given", "visit-paused", "visit-resumed",
            "picture-taken", "reminder-set", "follow-up-noted", "handed-over", "visit-closed", "person-erased", "cylinder-used",
        ];
        var kinds = typeof(VisitEvent).GetCustomAttributes<JsonDerivedTypeAttribute>().Select(kind => (string)kind.TypeDiscriminator!);

        Assert.Subset(kinds.ToHashSet(), released.ToHashSet());
    }
}
