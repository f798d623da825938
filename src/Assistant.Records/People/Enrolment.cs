using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.People;

/// <summary>A code that was given out. It is shown this once; the records keep only its digest.</summary>
public sealed record IssuedCode(string Code, DateTimeOffset Expires);

/// <summary>What became of a code that was sent in.</summary>
public abstract record EnrolmentResult;

/// <summary>The address speaks for the person from now on.</summary>
/// <param name="IsStopped">True where the address asked for no messages before: it gets none until it sends START.</param>
public sealed record Enrolled(Person Person, bool IsStopped) : EnrolmentResult;

/// <summary>The code is none, was used, or is past its time: which of them is not said to a stranger.</summary>
public sealed record CodeRefused : EnrolmentResult;

/// <summary>Too many wrong codes came in; nothing was looked up.</summary>
/// <param name="Until">When the next one is looked at.</param>
public sealed record TooManyTries(DateTimeOffset Until) : EnrolmentResult;

/// <summary>Binds phones to people by one-time codes.</summary>
public sealed class Enrolment
{
    private readonly IRecordsDatabase database;
    private readonly AddressDigests digests;
    private readonly TimeProvider time;
    private readonly Func<int, int> below;
    private readonly PeopleOptions options;

    internal Enrolment(IRecordsDatabase database, AddressDigests digests, TimeProvider time, Func<int, int> below, PeopleOptions options) =>
        (this.database, this.digests, this.time, this.below, this.options) = (database, digests, time, below, options);

    /// <summary>A new code for the person; one given before no longer works. One who was locked out is let in again by it.</summary>
    public Task<IssuedCode> IssueAsync(Person person, CancellationToken cancellation = default) => database.WriteAsync(async context =>
    {
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await context.HoldAsync("enrolment", cancellation);
        await context.EnrolmentCodes.Where(c => c.PersonId == person.Id).ExecuteDeleteAsync(cancellation);
        var issued = new IssuedCode(SpokenCode.ForEnrolment(below), time.GetUtcNow() + options.CodeLifetime);
        context.EnrolmentCodes.Add(new() { Digest = digests.OfCode(issued.Code), PersonId = person.Id, Expires = issued.Expires });
        await context.People.Where(p => p.Id == person.Id).ExecuteUpdateAsync(p => p.SetProperty(r => r.RevokedAt, (DateTimeOffset?)null), cancellation);
        await context.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return issued;
    }, cancellation);

    /// <summary>Takes the code that came from an address. It works once; a number that belonged to another goes over to the new person.</summary>
    public Task<EnrolmentResult> EnrolAsync(string channel, string address, string code, CancellationToken cancellation = default) => database.WriteAsync(async context =>
    {
        var now = time.GetUtcNow();
        var who = digests.OfAddress(channel, address);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);

        // No two redeem one code.
        await context.HoldAsync("enrolment", cancellation);
        await context.EnrolmentTries.Where(t => t.At <= now - options.TriesWindow).ExecuteDeleteAsync(cancellation);
        if (await LockedUntilAsync(context, who, cancellation) is { } until)
        {
            await transaction.CommitAsync(cancellation);
            return new TooManyTries(until);
        }

        var digest = SpokenCode.Read(code) is { } read ? digests.OfCode(read) : "";
        var personId = await context.EnrolmentCodes.Where(c => c.Digest == digest && c.Expires > now).Select(c => c.PersonId).FirstOrDefaultAsync(cancellation);
        if (personId is null)
        {
            context.EnrolmentTries.Add(new() { AddressDigest = who, At = now });
            await context.SaveChangesAsync(cancellation);
            await transaction.CommitAsync(cancellation);
            return new CodeRefused();
        }

        await context.EnrolmentCodes.Where(c => c.Digest == digest).ExecuteDeleteAsync(cancellation);
        await BindAsync(context, channel, address.Trim(), personId, now, cancellation);
        var person = await context.People.AsNoTracking().FirstAsync(p => p.Id == personId, cancellation);
        var isStopped = await context.StoppedAddresses.AnyAsync(s => s.AddressDigest == who, cancellation);
        await transaction.CommitAsync(cancellation);
        return (EnrolmentResult)new Enrolled(person.ToPerson(), isStopped);
    }, cancellation);

    /// <summary>Binds an address the office vouches for itself: a program's key, an account with the firm's sign-in. No code is needed.</summary>
    public Task BindAsync(Person person, string channel, string address, CancellationToken cancellation = default) => database.WriteAsync(async context =>
    {
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await context.HoldAsync("enrolment", cancellation);
        await BindAsync(context, channel, address.Trim(), person.Id, time.GetUtcNow(), cancellation);
        await transaction.CommitAsync(cancellation);
        return 0;
    }, cancellation);

    private async Task<DateTimeOffset?> LockedUntilAsync(RecordsContext context, string who, CancellationToken cancellation)
    {
        var own = await context.EnrolmentTries.Where(t => t.AddressDigest == who).OrderBy(t => t.At).Select(t => t.At).ToListAsync(cancellation);
        if (own.Count >= options.TriesOfAnAddress)
        {
            return own[0] + options.TriesWindow;
        }

        var all = await context.EnrolmentTries.OrderBy(t => t.At).Select(t => t.At).ToListAsync(cancellation);
        return all.Count >= options.TriesInAll ? all[0] + options.TriesWindow : null;
    }

    private static async Task BindAsync(RecordsContext context, string channel, string address, string personId, DateTimeOffset now, CancellationToken cancellation)
    {
        if (await context.ChannelIdentities.FindAsync([channel, address], cancellation) is { } known)
        {
            (known.PersonId, known.BoundAt, known.RevokedAt) = (personId, now, null);
        }
        else
        {
            context.ChannelIdentities.Add(new() { Channel = channel, Address = address, PersonId = personId, BoundAt = now });
        }

        await context.SaveChangesAsync(cancellation);
    }
}
