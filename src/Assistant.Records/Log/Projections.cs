using Assistant.Dialogue.Visits;
using Assistant.Records.Assets;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Log;

/// <summary>Keeps the tables that are read by other keys than the visit in step with the log, in the log's own transaction.</summary>
internal static class Projections
{
    /// <param name="first">The number of the first of the events.</param>
    public static async Task ApplyAsync(RecordsContext context, VisitRow visit, int first, IReadOnlyList<VisitEvent> events)
    {
        // What stands before the first message of a new visit came from the record: it is not carried back to it.
        var fromRecord = events is [VisitOpened, ..] ? events.TakeWhile(e => e is not MessageHeard).Count() : 0;
        for (var i = 0; i < events.Count; i++)
        {
            var number = first + i;
            switch (events[i])
            {
                case ReminderSet reminder:
                    context.Reminders.Add(new() { VisitId = visit.Id, EventNumber = number, Due = reminder.Due });
                    break;
                case CheckInExpected expected:
                    await SettleAsync(context, visit.Id, expected.Replaces);
                    context.Reminders.Add(new() { VisitId = visit.Id, EventNumber = number, Due = expected.Ask });
                    break;
                case CheckInEnded ended:
                    await SettleAsync(context, visit.Id, ended.Last);
                    break;
                case FactTaken taken when i >= fromRecord && visit.AssetId is { } assetId && AssetFacts.IsKept(taken):
                    await AssetFacts.CarryAsync(context, assetId, taken, visit.Id, number);
                    break;
                case EventWithdrawn { Withdrawn: var withdrawn }:
                    await WithdrawAsync(context, visit, withdrawn);
                    break;
                case PersonJoined { PersonId.Length: > 0 } joined:
                    await MembersOf.JoinAsync(context, visit.Id, joined);
                    break;
                case PersonLeft left:
                    await MembersOf.LeaveAsync(context, visit.Id, left);
                    break;
                case HandedOver { From.Length: > 0 } handed:
                    await MembersOf.HandOverAsync(context, visit.Id, handed);
                    break;
                case VisitClosed closed:
                    visit.ClosedAt = closed.At;
                    break;
            }
        }
    }

    private static async Task SettleAsync(RecordsContext context, string visitId, int number)
    {
        if (await context.Reminders.FindAsync(visitId, number) is { } open)
        {
            context.Reminders.Remove(open);
        }
    }

    private static async Task WithdrawAsync(RecordsContext context, VisitRow visit, int number)
    {
        var visitId = visit.Id;
        if (await context.Events.FindAsync(visitId, number) is { Kind: EventJson.VisitClosedKind })
        {
            visit.ClosedAt = null;
        }

        await SettleAsync(context, visitId, number);
        var carried = context.AssetFacts.Local.Where(f => f.VisitId == visitId && f.EventNumber == number)
            .Concat(await context.AssetFacts.Where(f => f.VisitId == visitId && f.EventNumber == number).ToListAsync())
            .Distinct().ToList();
        context.AssetFacts.RemoveRange(carried);
    }
}
