using System.Collections.Immutable;

namespace Assistant.Dialogue.Visits;

/// <summary>One passage through a walk on a visit: a second vacuum is a run of its own.</summary>
/// <param name="StartedBy">The event that began it, by which the run is known.</param>
public sealed record WalkRun(string Walk, int StartedBy)
{
    public string? Stop { get; init; }

    /// <summary>The fact asked for at the stop, or the fault acted on, or null.</summary>
    public string? About { get; init; }

    /// <summary>The event that finished the run, or null.</summary>
    public int? FinishedBy { get; init; }

    /// <summary>What happened at its stops, in the order of the log.</summary>
    public ImmutableArray<StopMark> Marks { get; init; } = [];

    public bool IsSkipped(string stop) => Last(stop) is { Kind: StopMarkKind.Skipped };

    public bool IsConfirmed(string stop) => Last(stop) is { Kind: StopMarkKind.Confirmed };

    /// <summary>The option chosen at a stop, or null.</summary>
    public string? Chosen(string stop) => Last(stop) is { Kind: StopMarkKind.Chosen } mark ? mark.Word : null;

    /// <summary>The last time the stop's judgement was said on this passage, or null.</summary>
    public StopMark? Judged(string stop) => After(stop, StopMarkKind.Judged);

    /// <summary>The last time the walk came to the stop on this passage, or null.</summary>
    public StopMark? Reached(string stop) => After(stop, StopMarkKind.Reached);

    /// <summary>The event that last had the stop passed anew; 0 where none did.</summary>
    public int ReopenedBy(string stop)
    {
        for (var i = Marks.Length - 1; i >= 0; i--)
        {
            if (Marks[i].Stop == stop && Marks[i].Kind == StopMarkKind.Reopened)
            {
                return Marks[i].Number;
            }
        }

        return 0;
    }

    /// <summary>The stops left out, with the event that did so.</summary>
    public IEnumerable<StopMark> Skipped => Standing(StopMarkKind.Skipped);

    /// <summary>The stops confirmed, with the event that did so.</summary>
    public IEnumerable<StopMark> Confirmed => Standing(StopMarkKind.Confirmed);

    public WalkRun With(StopMark mark) => this with { Marks = Marks.Add(mark) };

    /// <summary>Without what an event that no longer counts did.</summary>
    /// <param name="leadsBack">True where it was an answer: what was come to after it is come to anew, with its hazards said again.</param>
    public WalkRun Without(int number, bool leadsBack)
    {
        var isAnswer = leadsBack || Marks.Any(m => m.Number == number && m.Kind is StopMarkKind.Confirmed or StopMarkKind.Chosen);
        var marks = Marks.RemoveAll(m => m.Number == number || (isAnswer && m.Kind == StopMarkKind.Reached && m.Number > number));
        return this with
        {
            Marks = marks,
            Stop = isAnswer && marks.Length < Marks.Length && marks.All(m => m.Stop != Stop || m.Kind != StopMarkKind.Reached) ? null : Stop,
            FinishedBy = FinishedBy == number ? null : FinishedBy,
        };
    }

    private IEnumerable<StopMark> Standing(StopMarkKind kind)
    {
        foreach (var mark in Marks)
        {
            if (mark.Kind == kind && Last(mark.Stop) == mark)
            {
                yield return mark;
            }
        }
    }

    // What settles a stop is what was said of it last.
    private StopMark? Last(string stop)
    {
        for (var i = Marks.Length - 1; i >= 0; i--)
        {
            if (Marks[i].Stop == stop && Marks[i].Kind is not (StopMarkKind.Judged or StopMarkKind.Reached))
            {
                return Marks[i];
            }
        }

        return null;
    }

    private StopMark? After(string stop, StopMarkKind kind)
    {
        for (var i = Marks.Length - 1; i >= 0; i--)
        {
            var mark = Marks[i];
            if (mark.Stop == stop && (mark.Kind == kind || mark.Kind == StopMarkKind.Reopened))
            {
                return mark.Kind == kind ? mark : null;
            }
        }

        return null;
    }
}
