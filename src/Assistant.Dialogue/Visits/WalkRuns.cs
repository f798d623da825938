using System.Collections.Immutable;

namespace Assistant.Dialogue.Visits;

/// <summary>The runs of a visit's walks, and in which order they were entered. Immutable.</summary>
public sealed record WalkRuns
{
    public static WalkRuns None { get; } = new();

    /// <summary>In the order they were begun.</summary>
    public ImmutableArray<WalkRun> All { get; private init; } = [];

    // Which run was entered by which event: begun, or taken up again.
    private ImmutableArray<(int Number, int Run)> Entered { get; init; } = [];

    /// <summary>The run under way: the one entered last that is not finished; where all are, the one entered last.</summary>
    public WalkRun? Current
    {
        get
        {
            WalkRun? last = null;
            for (var i = Entered.Length - 1; i >= 0; i--)
            {
                var run = Find(Entered[i].Run);
                if (run is { FinishedBy: null })
                {
                    return run;
                }

                last ??= run;
            }

            return last;
        }
    }

    /// <summary>The runs left unfinished for another, the last left first.</summary>
    public IEnumerable<WalkRun> Left => Enumerable.Reverse(Entered).Select(e => Find(e.Run)).OfType<WalkRun>()
        .Where(r => r.FinishedBy is null).DistinctBy(r => r.StartedBy).Skip(Current is { FinishedBy: null } ? 1 : 0);

    /// <summary>The last run of a walk that is not finished, or null.</summary>
    public WalkRun? Open(string walk) => All.LastOrDefault(r => r.Walk == walk && r.FinishedBy is null);

    /// <summary>The last run of a walk, or null.</summary>
    public WalkRun? Latest(string walk) => All.LastOrDefault(r => r.Walk == walk);

    public WalkRuns Begin(string walk, int number) => this with { All = All.Add(new(walk, number)), Entered = Entered.Add((number, number)) };

    /// <summary>Takes an unfinished run of the walk up again; begins one where there is none.</summary>
    public WalkRuns Enter(string walk, int number) =>
        Open(walk) is { } run ? this with { Entered = Entered.Add((number, run.StartedBy)) } : Begin(walk, number);

    /// <summary>Changes the run that an event of that walk belongs to: the one under way, else its last open one, else a new one.</summary>
    public WalkRuns Change(string walk, int number, Func<WalkRun, WalkRun> change)
    {
        var known = Current is { } current && current.Walk == walk ? current : Open(walk) ?? Latest(walk);
        var (runs, run) = known is null ? (Begin(walk, number), new(walk, number)) : (this, known);
        return runs with { All = [.. runs.All.Select(r => r.StartedBy == run.StartedBy ? change(r) : r)] };
    }

    /// <summary>Without what an event that no longer counts did: a run it began is gone, one it left is under way again.</summary>
    /// <param name="leadsBack">True where it was an answer that the walk went on by.</param>
    public WalkRuns Without(int number, bool leadsBack) => this with
    {
        All = [.. All.Where(r => r.StartedBy != number).Select(r => r.Without(number, leadsBack))],
        Entered = Entered.RemoveAll(e => e.Number == number || e.Run == number),
    };

    // Asked for some hundred times a turn: no list of nodes, and nothing made to look through it.
    private WalkRun? Find(int startedBy)
    {
        foreach (var run in All)
        {
            if (run.StartedBy == startedBy)
            {
                return run;
            }
        }

        return null;
    }
}
