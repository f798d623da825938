using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Erasure;

/// <summary>
/// Erases a person from the records. Readings, verdicts and refrigerant amounts stay; who took them and what was said goes, and where
/// others handed the visit over to or from them. What others wrote about the person is not found by this, and pictures stay (they show equipment); look at both by hand.
/// </summary>
public sealed class PersonEraser(EventLog log)
{
    /// <summary>Erases everything said or done under that name, on every visit, and scrubs the file. Repeated, it does nothing more.</summary>
    /// <param name="by">Who erases; stays on record.</param>
    /// <returns>How many events were erased.</returns>
    /// <exception cref="RecordsException">The records can not be written; visits done before stay erased, run it again.</exception>
    public async Task<int> EraseAsync(string person, string by, DateTimeOffset at, CancellationToken cancellation = default)
    {
        var visits = await log.Database.UseAsync(context => context.Visits.AsNoTracking().OrderBy(v => v.Id).Select(v => v.Id).ToListAsync(cancellation));
        var erased = 0;
        foreach (var visitId in visits)
        {
            erased += await EraseFromAsync(visitId, person, by, at, cancellation);
        }

        await log.Database.ScrubAsync(cancellation);
        return erased;
    }

    private async Task<int> EraseFromAsync(string visitId, string person, string by, DateTimeOffset at, CancellationToken cancellation)
    {
        while (true)
        {
            cancellation.ThrowIfCancellationRequested();
            var events = await log.ReadAsync(visitId, cancellation);
            var erasure = PersonErasure.Of(events, person);
            if (erasure.Numbers.Count == 0)
            {
                return 0;
            }

            var told = new PersonErased([.. erasure.Numbers]) { At = at, By = by };
            if (await log.AppendAsync(new(visitId, events.Length, [told]) { Erasure = erasure }) is Appended)
            {
                return erasure.Numbers.Count;
            }
        }
    }
}
