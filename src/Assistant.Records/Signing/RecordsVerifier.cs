using System.Collections.Immutable;
using Assistant.Records.Chain;
using Assistant.Records.Storage;

namespace Assistant.Records.Signing;

/// <summary>Checks the log against itself, then against heads that were signed earlier: the first shows what was changed, the second what was cut off.</summary>
public sealed class RecordsVerifier(IRecordsDatabase database, SigningKey key)
{
    /// <param name="visitId">One visit; null takes all.</param>
    /// <param name="heads">Heads signed by this installation earlier.</param>
    /// <exception cref="RecordsException">There are heads, and not one of them was signed with this key.</exception>
    /// <returns>The verdict, with the first event that does not fit.</returns>
    public async Task<ChainVerdict> VerifyAsync(string? visitId, ImmutableArray<SignedHead> heads, CancellationToken cancellation = default)
    {
        var verdict = await new ChainVerifier(database).VerifyAsync(visitId, cancellation);
        if (!verdict.Holds)
        {
            return verdict;
        }

        // One head in many that does not fit was changed; where none fits, it is the key that was.
        if (!heads.IsEmpty && !heads.Any(h => h.IsSignedBy(key)))
        {
            throw new RecordsException(
                RecordsFault.Unreadable,
                $"The earlier heads ({heads.Length}) were signed with another key than this signing.key: restore the one that belongs to them from the backup, then verify again.");
        }

        var witness = new HeadWitness(database, key);
        foreach (var head in heads.Where(h => visitId is null || h.VisitId == visitId).OrderBy(h => h.VisitId, StringComparer.Ordinal).ThenBy(h => h.Version))
        {
            if (await witness.CheckAsync(head, cancellation) is { } broken)
            {
                return verdict with { Broken = broken };
            }
        }

        return verdict;
    }
}
