using System.Collections.Immutable;
using Assistant.Records.Chain;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Signing;

/// <summary>Holds a signed head against the log: events that were cut off its end leave a chain that fits, and only this shows it.</summary>
public sealed class HeadWitness(IRecordsDatabase database, SigningKey key)
{
    /// <summary>The head of a visit's log as it is now, signed; null where there is no such visit.</summary>
    public async Task<SignedHead?> SignAsync(string visitId, CancellationToken cancellation = default)
    {
        var visit = await database.UseAsync(context => context.Visits.AsNoTracking().FirstOrDefaultAsync(v => v.Id == visitId, cancellation));
        return visit is null ? null : SignedHead.Of(visitId, visit.Version, Convert.ToHexStringLower(visit.HeadHash), key);
    }

    /// <summary>The heads of all visits' logs as they are now, signed, in the order of the visits' ids.</summary>
    public async Task<ImmutableArray<SignedHead>> SignAllAsync(CancellationToken cancellation = default)
    {
        var visits = await database.UseAsync(context => context.Visits.AsNoTracking().OrderBy(v => v.Id).Select(v => new { v.Id, v.Version, v.HeadHash }).ToListAsync(cancellation));
        return [.. visits.Select(v => SignedHead.Of(v.Id, v.Version, Convert.ToHexStringLower(v.HeadHash), key))];
    }

    /// <summary>What of the log does not fit the head, or null where the log is that one, or that one gone on.</summary>
    public async Task<BrokenLink?> CheckAsync(SignedHead head, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(head);
        if (!head.IsSignedBy(key))
        {
            return new(head.VisitId, head.Version, "The head was not signed by this installation, or was changed.");
        }

        var (last, hash) = await database.UseAsync(async context => (
            await context.Events.Where(e => e.VisitId == head.VisitId).MaxAsync(e => (int?)e.Number, cancellation) ?? 0,
            await context.Events.AsNoTracking().Where(e => e.VisitId == head.VisitId && e.Number == head.Version).Select(e => e.Hash).FirstOrDefaultAsync(cancellation)));
        if (last < head.Version)
        {
            return new(head.VisitId, last + 1, $"The log ends at event {last}, the signed head says {head.Version}: its end was cut off.");
        }

        return hash is not null && Convert.ToHexStringLower(hash) == head.Hash
            ? null
            : new(head.VisitId, head.Version, "The log was written anew: its hash is not the signed one.");
    }
}
