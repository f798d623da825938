using System.Collections.Immutable;
using System.Security.Cryptography;
using Assistant.Records.Erasure;
using Assistant.Records.Log;
using Assistant.Records.Signing;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.People;

/// <summary>
/// Who uses these records: the firm, its people, their phones, and who is on which visit. Without a firm nobody signs in and
/// everything is open to whoever reaches the program, as it is on one machine. Safe for use by many at once.
/// </summary>
public sealed class PeopleService
{
    private readonly EventLog log;
    private readonly TimeProvider time;
    private readonly Func<int, int> below;

    /// <param name="below">A random number from 0 to below its argument; without it, from the system's secure source.</param>
    public PeopleService(EventLog log, SigningKey key, TimeProvider time, Func<int, int>? below = null, PeopleOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(log);
        this.log = log;
        this.time = time;
        this.below = below ?? RandomNumberGenerator.GetInt32;
        var digests = new AddressDigests(key);
        Enrolment = new(log.Database, digests, time, this.below, options ?? new());
        Phones = new(log.Database, digests, time);
        Visits = new(log, time, this.below);
    }

    /// <summary>One-time codes that bind a phone to a person.</summary>
    public Enrolment Enrolment { get; }

    /// <summary>Whom an address speaks for, and whether it may be written to.</summary>
    public Phones Phones { get; }

    /// <summary>Who may join a visit, and who is on it.</summary>
    public VisitPeople Visits { get; }

    /// <summary>The firms; empty on an installation that nobody signs in to.</summary>
    public Task<ImmutableArray<Firm>> FirmsAsync(CancellationToken cancellation = default) => log.Database.UseAsync(async context =>
        (await context.Firms.AsNoTracking().OrderBy(f => f.Name).Select(f => new Firm(f.Id, f.Name)).ToListAsync(cancellation)).ToImmutableArray());

    /// <summary>True where a firm is set up: then people are enrolled, and nobody else is heard.</summary>
    public Task<bool> HasFirmsAsync(CancellationToken cancellation = default) => log.HasFirmsAsync(cancellation);

    /// <summary>The firm of that name; it is set up where there is none.</summary>
    public Task<Firm> SetUpAsync(string name, CancellationToken cancellation = default) => log.Database.WriteAsync(async context =>
    {
        var called = Named(name);
        if (await context.Firms.FirstOrDefaultAsync(f => f.Name == called, cancellation) is { } known)
        {
            return new Firm(known.Id, known.Name);
        }

        var row = new FirmRow { Id = NewId(), Name = called };
        context.Firms.Add(row);
        await context.SaveChangesAsync(cancellation);
        return new Firm(row.Id, row.Name);
    }, cancellation);

    /// <summary>Adds a person to a firm.</summary>
    /// <exception cref="RecordsException">The name is empty or taken, or there is no such firm.</exception>
    public async Task<Person> AddAsync(string firmId, string name, PersonRoles roles, CancellationToken cancellation = default)
    {
        var called = Named(name);
        if (roles == PersonRoles.None)
        {
            throw Refused($"{called} needs a role: {string.Join(", ", PersonRoleNames.All)}.");
        }

        var row = new PersonRow { Id = NewId(), FirmId = firmId, Name = called, NameKey = KeyOf(called), Roles = (int)roles };
        try
        {
            return await log.Database.WriteAsync(async context =>
            {
                _ = await context.Firms.FindAsync([firmId], cancellation) ?? throw Refused("There is no such firm.");
                context.People.Add(row);
                await context.SaveChangesAsync(cancellation);
                return row.ToPerson();
            }, cancellation);
        }
        catch (Exception failure) when (log.Database.IsAlreadyThere(failure.InnerException ?? failure) || log.Database.IsAlreadyThere(failure))
        {
            throw Refused($"There is a {called} already. Add something to the name that tells the two apart.");
        }
    }

    /// <summary>The person called so (case does not count), or null.</summary>
    public Task<Person?> FindAsync(string name, CancellationToken cancellation = default) => log.Database.UseAsync(async context =>
    {
        var key = KeyOf(name);
        return (await context.People.AsNoTracking().FirstOrDefaultAsync(p => p.NameKey == key, cancellation))?.ToPerson();
    });

    /// <summary>Everyone by name, with phones and open codes.</summary>
    public Task<ImmutableArray<PersonEntry>> ListAsync(CancellationToken cancellation = default) => log.Database.UseAsync(async context =>
    {
        var people = await context.People.AsNoTracking().OrderBy(p => p.NameKey).ToListAsync(cancellation);
        var identities = await context.ChannelIdentities.AsNoTracking().ToListAsync(cancellation);
        var codes = await context.EnrolmentCodes.AsNoTracking().ToDictionaryAsync(c => c.PersonId, c => c.Expires, cancellation);
        return people.Select(person => new PersonEntry(
            person.ToPerson(),
            [.. identities.Where(i => i.PersonId == person.Id).OrderBy(i => i.BoundAt).Select(i => new ChannelIdentity(i.Channel, i.Address, i.BoundAt, i.RevokedAt))],
            codes.TryGetValue(person.Id, out var expires) && expires > time.GetUtcNow() ? expires : null)).ToImmutableArray();
    });

    /// <summary>The person leaves, or is locked out: no phone speaks for them, no code is open, they are on no visit. A new code lets them in again.</summary>
    public async Task RevokeAsync(Person person, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(person);
        await Visits.LeaveAllAsync(person, cancellation);
        var now = time.GetUtcNow();
        await log.Database.WriteAsync(async context =>
        {
            await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
            await context.People.Where(p => p.Id == person.Id).ExecuteUpdateAsync(p => p.SetProperty(r => r.RevokedAt, now), cancellation);
            await context.ChannelIdentities.Where(i => i.PersonId == person.Id && i.RevokedAt == null).ExecuteUpdateAsync(i => i.SetProperty(r => r.RevokedAt, now), cancellation);
            await context.EnrolmentCodes.Where(c => c.PersonId == person.Id).ExecuteDeleteAsync(cancellation);
            await transaction.CommitAsync(cancellation);
            return 0;
        }, cancellation);
    }

    /// <summary>Erases the person: their phones and name here, what was written to and from those phones, and what they said on every visit. The chain still holds.</summary>
    /// <param name="by">Who erases; stays on record.</param>
    /// <returns>How many events of the log were erased.</returns>
    public async Task<int> EraseAsync(Person person, string by, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(person);
        await RevokeAsync(person, cancellation);
        await log.Database.WriteAsync(async context =>
        {
            await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
            await EraseMessagesAsync(context, person, cancellation);
            await context.ChannelIdentities.Where(i => i.PersonId == person.Id).ExecuteDeleteAsync(cancellation);
            await context.People.Where(p => p.Id == person.Id).ExecuteDeleteAsync(cancellation);
            await transaction.CommitAsync(cancellation);
            return 0;
        }, cancellation);
        return await new PersonEraser(log).EraseAsync(person.Name, by, time.GetUtcNow(), cancellation);
    }

    // Beside the visits a phone is welcomed by name, reminded and answered: those rows are of no visit, and their address is the person's own.
    private static async Task EraseMessagesAsync(RecordsContext context, Person person, CancellationToken cancellation)
    {
        foreach (var own in await context.ChannelIdentities.AsNoTracking().Where(i => i.PersonId == person.Id).ToListAsync(cancellation))
        {
            await context.Outbox.Where(o => o.Channel == own.Channel && o.Conversation == own.Address).ExecuteDeleteAsync(cancellation);
            await context.Inbox.Where(i => i.Channel == own.Channel && i.Conversation == own.Address).ExecuteDeleteAsync(cancellation);
        }
    }

    private string NewId() => string.Create(16, below, static (span, below) =>
    {
        for (var i = 0; i < span.Length; i++)
        {
            span[i] = "0123456789abcdef"[below(16)];
        }
    });

    private static string Named(string name) =>
        name.Trim() is { Length: > 0 and <= 80 } called && !called.Any(char.IsControl)
            ? called
            : throw Refused("A name has one to eighty letters.");

    private static string KeyOf(string name) => name.Trim().ToUpperInvariant();

    private static RecordsException Refused(string message) => new(RecordsFault.Refused, message);
}
