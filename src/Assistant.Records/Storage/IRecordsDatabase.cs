using Assistant.Records.Log;

namespace Assistant.Records.Storage;

/// <summary>The database behind the records: the one place where one make of database differs from another.</summary>
public interface IRecordsDatabase
{
    RecordsContext NewContext();

    /// <summary>The questions that are asked all the time, on lines of their own where that is faster. Disposed of, it lets go of those and opens others when it is asked again.</summary>
    internal ITurnLookups Lookups { get; }

    /// <summary>How many workers of one program may take from the same queue: one where nothing keeps two from taking the same.</summary>
    int WorkersAtOnce { get; }

    /// <summary>Checks that the database is one of these records, of this release or an earlier one, and brings it up to date.</summary>
    /// <exception cref="RecordsException">It is locked, read-only, unreadable, foreign or newer.</exception>
    Task OpenAsync(CancellationToken cancellation = default);

    /// <summary>The failure in words for people, or null where it is not the database's.</summary>
    RecordsException? Explain(Exception failure);

    /// <summary>True where the failure is a row that was already there.</summary>
    bool IsAlreadyThere(Exception failure);

    /// <summary>True where another wrote first: nothing was stored, and read again and tried again it may be.</summary>
    bool IsLostRace(Exception failure);

    /// <summary>Runs what writes, after all that began to write before it where the database lets only one write at a time.</summary>
    internal Task<TResult> InTurnAsync<TResult>(Func<Task<TResult>> write, CancellationToken cancellation);

    /// <summary>Tells of the visits that other programs on these records wrote to, until it is cancelled; ends at once where the database tells nothing.</summary>
    Task ListenAsync(Action<VisitGrew> told, CancellationToken cancellation);

    /// <summary>Leaves no deleted or overwritten content behind in the tables, as far as the database lets that be done.</summary>
    Task ScrubAsync(CancellationToken cancellation = default);
}
