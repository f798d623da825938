using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Reminders;

/// <summary>The reminders that wait for their time. There is no scheduler: whoever gives them asks now and then.</summary>
public sealed class ReminderStore(IRecordsDatabase database)
{
    /// <summary>The reminders due by then and not yet given, earliest first.</summary>
    public Task<ImmutableArray<DueReminder>> DueAsync(DateTimeOffset now, CancellationToken cancellation = default) => database.UseAsync(async context =>
    {
        var rows = await context.Reminders.AsNoTracking()
            .Where(r => r.DoneAt == null && r.Due <= now)
            .OrderBy(r => r.Due).ThenBy(r => r.VisitId).ThenBy(r => r.EventNumber)
            .ToListAsync(cancellation);
        var due = ImmutableArray.CreateBuilder<DueReminder>(rows.Count);
        foreach (var row in rows)
        {
            var set = await context.Events.AsNoTracking().FirstAsync(e => e.VisitId == row.VisitId && e.Number == row.EventNumber, cancellation);
            var happened = EventJson.Read(set.Kind, set.Body, set.Personal, set.Number);
            var addresses = await context.Conversations.AsNoTracking().Where(c => c.VisitId == row.VisitId)
                .Select(c => new ConversationAddress(c.Channel, c.Conversation)).ToListAsync(cancellation);
            due.Add(new(row.VisitId, row.EventNumber, row.Due, (happened as ReminderSet)?.About ?? "", happened as CheckInExpected, [.. addresses]));
        }

        return due.ToImmutable();
    });

    /// <summary>Marks a reminder as given.</summary>
    /// <returns>False where another had given it already.</returns>
    public Task<bool> MarkDoneAsync(string visitId, int eventNumber, DateTimeOffset at, CancellationToken cancellation = default) => database.UseAsync(async context =>
        await context.Reminders
            .Where(r => r.VisitId == visitId && r.EventNumber == eventNumber && r.DoneAt == null)
            .ExecuteUpdateAsync(set => set.SetProperty(r => r.DoneAt, at), cancellation) == 1);

    /// <summary>The question was asked: the reminder waits for the time at which the contact is alerted.</summary>
    /// <returns>False where another had asked it already.</returns>
    public Task<bool> MarkAskedAsync(string visitId, CheckInExpected expected, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(expected);
        return database.UseAsync(async context => await context.Reminders
            .Where(r => r.VisitId == visitId && r.EventNumber == expected.Number && r.DoneAt == null && r.Due == expected.Ask)
            .ExecuteUpdateAsync(set => set.SetProperty(r => r.Due, expected.Alert), cancellation) == 1);
    }
}
