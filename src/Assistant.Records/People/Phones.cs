using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.People;

/// <summary>The addresses of the channels: whom they speak for, and whether they may be written to.</summary>
public sealed class Phones
{
    private readonly IRecordsDatabase database;
    private readonly AddressDigests digests;
    private readonly TimeProvider time;

    internal Phones(IRecordsDatabase database, AddressDigests digests, TimeProvider time) =>
        (this.database, this.digests, this.time) = (database, digests, time);

    /// <summary>The person the address speaks for; null where it is unknown or revoked, or the person is.</summary>
    public Task<Person?> WhoIsAsync(string channel, string address, CancellationToken cancellation = default) => database.UseAsync(async context =>
    {
        var trimmed = address.Trim();
        return (await context.ChannelIdentities.AsNoTracking()
            .Where(i => i.Channel == channel && i.Address == trimmed && i.RevokedAt == null)
            .Join(context.People, i => i.PersonId, p => p.Id, (i, p) => p)
            .FirstOrDefaultAsync(p => p.RevokedAt == null, cancellation))?.ToPerson();
    });

    /// <summary>A lost phone: the address speaks for nobody until it is enrolled again.</summary>
    /// <returns>False where it spoke for nobody before.</returns>
    public Task<bool> RevokeAsync(string channel, string address, CancellationToken cancellation = default) => database.WriteAsync(async context =>
    {
        var (trimmed, now) = (address.Trim(), time.GetUtcNow());
        return await context.ChannelIdentities.Where(i => i.Channel == channel && i.Address == trimmed && i.RevokedAt == null)
            .ExecuteUpdateAsync(i => i.SetProperty(r => r.RevokedAt, now), cancellation) > 0;
    }, cancellation);

    /// <summary>STOP: nothing more is sent to the address, whoever has it, until START.</summary>
    public Task StopAsync(string channel, string address, CancellationToken cancellation = default) => database.WriteAsync(async context =>
    {
        var digest = digests.OfAddress(channel, address);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await context.HoldAsync(digest, cancellation);
        await context.StoppedAddresses.Where(s => s.AddressDigest == digest).ExecuteDeleteAsync(cancellation);
        context.StoppedAddresses.Add(new() { AddressDigest = digest, At = time.GetUtcNow() });
        await context.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return 0;
    }, cancellation);

    /// <summary>START: the address may be written to again.</summary>
    public Task StartAsync(string channel, string address, CancellationToken cancellation = default) => database.WriteAsync(async context =>
    {
        var digest = digests.OfAddress(channel, address);
        return await context.StoppedAddresses.Where(s => s.AddressDigest == digest).ExecuteDeleteAsync(cancellation);
    }, cancellation);

    public Task<bool> IsStoppedAsync(string channel, string address, CancellationToken cancellation = default) => database.UseAsync(context =>
    {
        var digest = digests.OfAddress(channel, address);
        return context.StoppedAddresses.AnyAsync(s => s.AddressDigest == digest, cancellation);
    });
}
