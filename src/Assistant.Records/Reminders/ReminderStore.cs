using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Reminders;

/// <summary>The reminders that wait for their time. There is no scheduler: whoever gives them asks now and then.</summary>
public sealed class ReminderStore(IRecordsDatabase database)
{
    /// <summary>The reminders due by then and not yet given, earliest first.</summary>
    public Task<ImmutableArray<DueReminder>> DueAsync(DateTimeOffset now, CancellationToken cancellation = default) =>
        ReadAsync(reminders => reminders.Where(r => r.DoneAt == null && r.Due <= now), cancellation);

    /// <summary>The reminders of a visit that were given in answer to that asking.</summary>
    public Task<ImmutableArray<DueReminder>> GivenAsync(string visitId, string asking, CancellationToken cancellation = default) =>
        ReadAsync(reminders => reminders.Where(r => r.VisitId == visitId && r.GivenTo == asking), cancellation);

    /// <summary>Marks a reminder as given.</summary>
    /// <param name="asking">The asking it was given to, or null: see <see cref="GivenAsync"/>.</param>
    /// <returns>False where another had given it already.</returns>
    public Task<bool> MarkDoneAsync(string visitId, int eventNumber, DateTimeOffset at, string? asking = null, CancellationToken cancellation = default) => database.WriteAsync(async context =>
        await context.Reminders
            .Where(r => r.VisitId == visitId && r.EventNumber == eventNumber && r.DoneAt == null)
            .ExecuteUpdateAsync(set => set.SetProperty(r => r.DoneAt, at).SetProperty(r => r.GivenTo, asking), cancellation) == 1, cancellation);

    /// <summary>The question was asked: the reminder waits for the time at which the contact is alerted.</summary>
    /// <returns>False where another had asked it already.</returns>
    public Task<bool> MarkAskedAsync(string visitId, CheckInExpected expected, string? asking = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(expected);
        return database.WriteAsync(async context => await context.Reminders
            .Where(r => r.VisitId == visitId && r.EventNumber == expected.Number && r.DoneAt == null && r.Due == expected.Ask)
            .ExecuteUpdateAsync(set => set.SetProperty(r => r.Due, expected.Alert).SetProperty(r => r.GivenTo, asking), cancellation) == 1, cancellation);
    }

    private Task<ImmutableArray<DueReminder>> ReadAsync(Func<IQueryable<ReminderRow>, IQueryable<ReminderRow>> which, CancellationToken cancellation) => database.UseAsync(async context =>
    {
        var rows = await which(context.Reminders.AsNoTracking())
            .Join(context.Events, r => new { r.VisitId, Number = r.EventNumber }, e => new { e.VisitId, e.Number }, (r, e) => new { Reminder = r, Set = e })
            .OrderBy(r => r.Reminder.Due).ThenBy(r => r.Reminder.VisitId).ThenBy(r => r.Reminder.EventNumber)
            .ToListAsync(cancellation);
        var visits = rows.Select(r => r.Reminder.VisitId).Distinct().ToList();
        var conversations = visits.Count == 0 ? [] : await context.Conversations.AsNoTracking().Where(c => visits.Contains(c.VisitId)).ToListAsync(cancellation);
        var addresses = conversations.ToLookup(c => c.VisitId, c => new ConversationAddress(c.Channel, c.Conversation));
        return rows.Select(r =>
        {
            var happened = EventJson.Read(r.Set.Kind, r.Set.Body, r.Set.Personal, r.Set.Number);
            return new DueReminder(
                r.Reminder.VisitId, r.Reminder.EventNumber, r.Reminder.Due, happened.By, (happened as ReminderSet)?.About ?? "", happened as CheckInExpected, [.. addresses[r.Reminder.VisitId]])
            {
                IsDone = r.Reminder.DoneAt is not null,
            };
        }).ToImmutableArray();
    });
}
