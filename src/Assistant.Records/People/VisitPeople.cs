using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Rooms;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.People;

/// <summary>A person on a visit.</summary>
public sealed record VisitMember(string PersonId, string Name, PersonRoles Role, DateTimeOffset Since);

/// <summary>What became of the wish to join a visit.</summary>
public abstract record JoinResult;

/// <summary>The person is on the visit, and what they say in that conversation belongs to it.</summary>
public sealed record Joined(string VisitId, PersonRoles Role) : JoinResult;

/// <summary>There is no such open visit, or none that the person may join: which of them is not said.</summary>
public sealed record JoinRefused : JoinResult;

/// <summary>Who may join a visit, who is on it with which role, and the code it is joined by. Joining and leaving stand in the visit's log.</summary>
public sealed class VisitPeople
{
    private const int Attempts = 20;

    private readonly EventLog log;
    private readonly TimeProvider time;
    private readonly Func<int, int> below;

    internal VisitPeople(EventLog log, TimeProvider time, Func<int, int> below) => (this.log, this.time, this.below) = (log, time, below);

    /// <summary>True where the person may join the visit. Without a firm everyone may; with one, its own people, and on a visit that no firm has, any firm's.</summary>
    public Task<bool> MayJoinAsync(string visitId, Person? person, CancellationToken cancellation = default) => log.Database.UseAsync(async context =>
    {
        if (!await context.Firms.AnyAsync(cancellation))
        {
            return true;
        }

        var firm = person is null ? null : (await context.People.AsNoTracking().FirstOrDefaultAsync(p => p.Id == person.Id && p.RevokedAt == null, cancellation))?.FirmId;
        return firm is not null && !await context.VisitAccess.AnyAsync(a => a.VisitId == visitId && a.FirmId != null && a.FirmId != firm, cancellation);
    });

    /// <summary>The code of an open visit, drawn when it is first asked for. The visit then belongs to that firm, if one is named.</summary>
    /// <exception cref="RecordsException">The visit is another firm's.</exception>
    public Task<string> CodeOfAsync(string visitId, string? firmId, CancellationToken cancellation = default) => log.Database.WriteAsync(async context =>
    {
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);

        // The codes of closed visits are free again. No two draw the same.
        await context.HoldAsync("visit codes", cancellation);
        await context.VisitAccess.Where(a => a.VisitId != visitId && a.Code != "" && context.Visits.Any(v => v.Id == a.VisitId && v.ClosedAt != null))
            .ExecuteUpdateAsync(a => a.SetProperty(r => r.Code, ""), cancellation);
        var access = await context.VisitAccess.FindAsync([visitId], cancellation);
        if (access?.FirmId is { } owner && firmId is not null && owner != firmId)
        {
            throw new RecordsException(RecordsFault.Refused, "This visit is not one of this firm.");
        }

        if (access is not { Code.Length: > 0 } || (access.FirmId is null && firmId is not null))
        {
            var taken = (await context.VisitAccess.Where(a => a.Code != "").Select(a => a.Code).ToListAsync(cancellation)).ToHashSet(StringComparer.Ordinal);
            access ??= context.VisitAccess.Add(new() { VisitId = visitId, FirmId = firmId, Code = "" }).Entity;
            access.FirmId ??= firmId;
            access.Code = access.Code.Length > 0 ? access.Code : SpokenCode.ForVisit(below, taken);
            await context.SaveChangesAsync(cancellation);
        }

        await transaction.CommitAsync(cancellation);
        return access.Code;
    }, cancellation);

    /// <summary>Joins the open visit of that code from a conversation of a channel.</summary>
    /// <param name="role">One of the person's roles, or null: on site where nobody is yet and they may be, else helping, else office.</param>
    /// <param name="called">How one who does not sign in calls themselves, or null.</param>
    public async Task<JoinResult> JoinByCodeAsync(string code, Person? person, string channel, string conversation, PersonRoles? role = null, string? called = null, CancellationToken cancellation = default)
    {
        var digits = string.Concat(code.Where(char.IsAsciiDigit));
        var visitId = digits.Length == 0 ? null : await log.Database.UseAsync(context => context.VisitAccess
            .Where(a => a.Code == digits)
            .Join(context.Visits, a => a.VisitId, v => v.Id, (a, v) => v)
            .Where(v => v.ClosedAt == null).Select(v => v.Id).FirstOrDefaultAsync(cancellation));
        return visitId is null ? new JoinRefused() : await JoinAsync(visitId, person, channel, conversation, role, called, cancellation);
    }

    /// <summary>Puts the person on the visit and the conversation with them. Joined again, only a new role changes anything.</summary>
    /// <param name="person">Null where nobody signs in: the conversation comes to the visit, and with it who joined, where they are called something.</param>
    /// <param name="called">How one who does not sign in calls themselves, or null.</param>
    public async Task<JoinResult> JoinAsync(string visitId, Person? person, string channel, string conversation, PersonRoles? role = null, string? called = null, CancellationToken cancellation = default)
    {
        if ((role is { } asked && person?.Roles.HasFlag(asked) == false) || !await MayJoinAsync(visitId, person, cancellation))
        {
            return new JoinRefused();
        }

        var chosen = person is null ? await GreetAsync(visitId, called, role ?? PersonRoles.OnSite, cancellation) : await SettleRoleAsync(visitId, person, role, cancellation);
        await TurnAsync(channel, conversation, visitId, cancellation);
        return new Joined(visitId, chosen);
    }

    /// <summary>The person is no longer on the visit. Nothing changes where they were not.</summary>
    public async Task LeaveAsync(string visitId, Person person, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(person);
        if ((await OnVisitAsync(visitId, cancellation)).Any(m => m.PersonId == person.Id))
        {
            await AppendAsync(visitId, new PersonLeft(person.Id) { At = time.GetUtcNow(), By = person.Name }, cancellation);
        }
    }

    /// <summary>Who is on the visit, the longest first.</summary>
    public Task<ImmutableArray<VisitMember>> OnVisitAsync(string visitId, CancellationToken cancellation = default) => log.Database.UseAsync(async context =>
        (await context.VisitMembers.AsNoTracking().Where(m => m.VisitId == visitId)
            .Join(context.People, m => m.PersonId, p => p.Id, (m, p) => new { m.PersonId, p.Name, m.Role, m.Since }).ToListAsync(cancellation))
        .OrderBy(m => m.Since).ThenBy(m => m.PersonId, StringComparer.Ordinal)
        .Select(m => new VisitMember(m.PersonId, m.Name, PersonRoleNames.Find(m.Role) ?? PersonRoles.Helping, m.Since)).ToImmutableArray());

    internal async Task LeaveAllAsync(Person person, CancellationToken cancellation)
    {
        var visits = await log.Database.UseAsync(context => context.VisitMembers.Where(m => m.PersonId == person.Id).Select(m => m.VisitId).ToListAsync(cancellation));
        foreach (var visitId in visits)
        {
            await LeaveAsync(visitId, person, cancellation);
        }
    }

    private async Task<PersonRoles> SettleRoleAsync(string visitId, Person person, PersonRoles? role, CancellationToken cancellation)
    {
        var members = await OnVisitAsync(visitId, cancellation);
        var now = members.FirstOrDefault(m => m.PersonId == person.Id);
        var chosen = role ?? now?.Role ?? Usual(person, members);
        if (now?.Role != chosen)
        {
            await AppendAsync(visitId, new PersonJoined(person.Id, chosen.Names().First()) { At = time.GetUtcNow(), By = person.Name }, cancellation);
        }

        return chosen;
    }

    // On site, as is everyone who speaks where nobody signs in.
    private async Task<PersonRoles> GreetAsync(string visitId, string? called, PersonRoles role, CancellationToken cancellation)
    {
        if (called is { Length: > 0 } && !VisitCrew.Of(VisitState.Fold(await log.ReadAsync(visitId, cancellation))).Any(m => OneSpelling.AreOne(m.Name, called)))
        {
            await AppendAsync(visitId, new PersonJoined("", role.Names().First()) { At = time.GetUtcNow(), By = called }, cancellation);
        }

        return role;
    }

    private static PersonRoles Usual(Person person, ImmutableArray<VisitMember> members)
    {
        var mayBeOnSite = person.Roles.HasFlag(PersonRoles.OnSite);
        return mayBeOnSite && !members.Any(m => m.Role == PersonRoles.OnSite) ? PersonRoles.OnSite
            : person.Roles.HasFlag(PersonRoles.Helping) ? PersonRoles.Helping
            : person.Roles.HasFlag(PersonRoles.Office) ? PersonRoles.Office
            : PersonRoles.OnSite;
    }

    private async Task AppendAsync(string visitId, VisitEvent happened, CancellationToken cancellation)
    {
        for (var attempt = 0; attempt < Attempts; attempt++)
        {
            var events = await log.ReadAsync(visitId, cancellation);
            if (events.IsEmpty)
            {
                throw new RecordsException(RecordsFault.Refused, "There is no such visit.");
            }

            if (await log.AppendAsync(new(visitId, events.Length, [happened])) is Appended)
            {
                return;
            }
        }

        throw new RecordsException(RecordsFault.Contended, "Others wrote to this visit at the same time again and again. Nothing was stored; say it again.");
    }

    private Task<int> TurnAsync(string channel, string conversation, string visitId, CancellationToken cancellation) => log.Database.WriteAsync(async context =>
    {
        if (await context.Conversations.FindAsync([channel, conversation], cancellation) is { } known)
        {
            known.VisitId = visitId;
        }
        else
        {
            context.Conversations.Add(new() { Channel = channel, Conversation = conversation, VisitId = visitId });
        }

        var told = await context.Visits.Where(v => v.Id == visitId).Select(v => v.Version).FirstOrDefaultAsync(cancellation);
        await RoomBinding.BindAsync(context, channel, conversation, visitId, told);
        return await context.SaveChangesAsync(cancellation);
    }, cancellation);
}
