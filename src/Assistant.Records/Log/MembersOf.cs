using Assistant.Dialogue.Visits;
using Assistant.Records.Storage;

namespace Assistant.Records.Log;

/// <summary>Keeps who is on a visit in step with the log.</summary>
internal static class MembersOf
{
    public static async Task JoinAsync(RecordsContext context, string visitId, PersonJoined joined)
    {
        if (await context.VisitMembers.FindAsync(visitId, joined.PersonId) is { } known)
        {
            (known.Role, known.Since) = (joined.Role, joined.At);
        }
        else
        {
            context.VisitMembers.Add(new() { VisitId = visitId, PersonId = joined.PersonId, Role = joined.Role, Since = joined.At });
        }
    }

    public static async Task HandOverAsync(RecordsContext context, string visitId, HandedOver handed)
    {
        foreach (var (id, role) in new[] { (handed.FromId, VisitCrew.Helping), (handed.ToId, VisitCrew.OnSite) })
        {
            if (id is { Length: > 0 } && await context.VisitMembers.FindAsync(visitId, id) is { } known)
            {
                known.Role = role;
            }
        }
    }

    public static async Task LeaveAsync(RecordsContext context, string visitId, PersonLeft left)
    {
        if (await context.VisitMembers.FindAsync(visitId, left.PersonId) is { } known)
        {
            context.VisitMembers.Remove(known);
        }
    }
}
