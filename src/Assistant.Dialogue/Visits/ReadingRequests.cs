using System.Collections.Immutable;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Visits;

/// <summary>A reading that somebody asked for.</summary>
/// <param name="Number">The event that asked.</param>
/// <param name="By">Who asked.</param>
/// <param name="Channel">The channel they asked by.</param>
public sealed record ReadingRequest(int Number, Fact Fact, string By, DateTimeOffset At, string Channel)
{
    /// <summary>The event that took the reading, or null.</summary>
    public int? AnsweredBy { get; init; }

    /// <summary>Who gave it up, or null.</summary>
    public string? DroppedBy { get; init; }

    /// <summary>True where the one who asked was told what became of it.</summary>
    public bool IsTold { get; init; }

    public bool IsOpen => AnsweredBy is null && DroppedBy is null;
}

/// <summary>What people asked for on a visit, oldest first. Immutable.</summary>
public sealed record ReadingRequests
{
    public static ReadingRequests None { get; } = new();

    public ImmutableList<ReadingRequest> All { get; private init; } = [];

    /// <summary>What waits for whoever stands at that place, the oldest first; what is taken anywhere waits everywhere.</summary>
    /// <param name="place">room or unit, or null where it is not known.</param>
    public IEnumerable<ReadingRequest> At(string? place) => All.Where(r => r.IsOpen && r.Fact.Place switch
    {
        Place.Room => place is null or "room",
        Place.Unit => place == "unit",
        _ => true,
    });

    /// <summary>What was settled by another and the one who asked has not been told of yet.</summary>
    public IEnumerable<ReadingRequest> ToTell(string asker) => All.Where(r => r.By == asker && !r.IsOpen && !r.IsTold);

    internal ReadingRequests Add(ReadingRequest request) => new() { All = All.Add(request) };

    /// <summary>A value of the fact was taken: it answers what was asked for before then.</summary>
    internal ReadingRequests Answer(int number, Fact fact, DateTimeOffset at, string by) =>
        Change(r => r.IsOpen && r.Fact == fact && r.At <= at, r => r with { AnsweredBy = number, IsTold = r.By == by });

    internal ReadingRequests Drop(int request, string by) => Change(r => r.Number == request && r.IsOpen, r => r with { DroppedBy = by, IsTold = r.By == by });

    internal ReadingRequests Tell(int request) => Change(r => r.Number == request, r => r with { IsTold = true });

    /// <summary>Without what an event that no longer counts did: a reading taken back leaves the wish open again.</summary>
    internal ReadingRequests Without(int number) => new ReadingRequests { All = All.RemoveAll(r => r.Number == number) }
        .Change(r => r.AnsweredBy == number, r => r with { AnsweredBy = null, IsTold = false });

    private ReadingRequests Change(Func<ReadingRequest, bool> which, Func<ReadingRequest, ReadingRequest> change) =>
        All.Any(which) ? new() { All = [.. All.Select(r => which(r) ? change(r) : r)] } : this;
}
