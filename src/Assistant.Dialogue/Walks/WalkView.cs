using System.Collections.Immutable;
using Assistant.Dialogue.Judgements;
using Assistant.Dialogue.Visits;
using Assistant.Trade;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Walks;

/// <summary>What a walk looks at when it decides where it stands: the visit and what the rule core makes of it.</summary>
/// <param name="Now">The time of the message being answered.</param>
public sealed record WalkView(WalkDefinition Walk, VisitState Visit, Assessment Assessment, DateTimeOffset Now)
{
    public FactSet Facts => Visit.Facts;

    /// <summary>The run of the walk that is looked at: the one under way, else its last.</summary>
    public WalkRun Run => Visit.Run is { } current && current.Walk == Walk.Name ? current : Visit.Runs.Latest(Walk.Name) ?? new(Walk.Name, 0);

    /// <summary>The leading fault where it is at least likely, otherwise null.</summary>
    public Finding? Leader => Assessment.Findings[0] is { Standing: Standing.Established or Standing.Likely } leading
        && leading.Code != FaultCode.NotEnoughEvidence && !IsRightlyResting ? leading : null;

    /// <summary>True where nothing calls and the room is not yet where the control must call: that it rests shows no fault, and none is named.</summary>
    public bool IsRightlyResting => IsResting(Assessment);

    /// <inheritdoc cref="IsRightlyResting"/>
    public static bool IsResting(Assessment assessment) =>
        assessment.Findings[0] is { Code: FaultCode.NoCallForCooling, Standing: not Standing.Established } resting && resting.Because.Any(r => r.Key == "reason.box-over-call-low");

    /// <inheritdoc cref="VisitState.UnderRepair"/>
    public FaultCode? UnderRepair => Visit.UnderRepair is { } fault ? Codes.FindFault(fault) : null;

    /// <summary>True where a stop that asks for the fact was skipped.</summary>
    public bool WasSkipped(Fact fact) => Run.Skipped.Any(mark => Walk.Find(mark.Stop)?.Asks == fact);

    /// <summary>True where the fact ever had one of these words on this visit, even if it was read again since.</summary>
    public bool Ever(Fact fact, ImmutableArray<string> words) =>
        Visit.History.TryGetValue(fact, out var entries)
        && entries.Exists(entry => entry.Value is Observation seen && words.Contains(seen.Value));

    /// <summary>True where anything that can only be read at the place was read there on this visit.</summary>
    public bool WasAt(Place place)
    {
        foreach (var value in Facts.Values)
        {
            if (value.Fact.Place == place && Visit.History.TryGetValue(value.Fact, out var entries) && entries[^1].Place != "record")
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True where the fact was taken after the walk came to the stop on this passage.</summary>
    public bool WasReadSince(string stop, Fact fact) =>
        Run.Reached(stop) is { } reached && Visit.History.TryGetValue(fact, out var entries) && entries[^1] is { Value: not null } last && last.Number > reached.Number;

    /// <summary>
    /// The event of the newest value that answers a stop on this passage, 0 for none: taken there, or volunteered in the message that
    /// brought the walk there or later. What was taken for another stop is that stop's.
    /// </summary>
    public int Newest(WalkStop stop)
    {
        if (stop.Asks is not { } fact || !Visit.History.TryGetValue(fact, out var entries))
        {
            return 0;
        }

        var run = Run;
        var reached = run.Reached(stop.Name);
        var since = reached?.Since ?? Math.Max(Visit.LastMessage, run.ReopenedBy(stop.Name));
        // Once the walk has come on to another stop, what is volunteered belongs there.
        var left = reached is null ? int.MaxValue : run.Marks.FirstOrDefault(m => m.Kind == StopMarkKind.Reached && m.Number > reached.Number && m.Stop != stop.Name)?.Number ?? int.MaxValue;
        var found = entries.FindLast(e => e.Value is not null && e.Number > since && (e.Stop == stop.Name || (e.Stop is null && e.Number < left)));
        return found?.Number ?? 0;
    }

    /// <summary>
    /// How the stop's judgement came out on this passage; null where it still waits for its reading or was left out. Once said it
    /// stands until a further reading is taken there.
    /// </summary>
    public string? Outcome(WalkStop stop)
    {
        if (stop.Judgement is null || Run.IsSkipped(stop.Name) || (stop.Asks is not null && Newest(stop) == 0))
        {
            return null;
        }

        return stop.Asks is not null && Run.Judged(stop.Name) is { } said && said.Number > Newest(stop) ? said.Word : Judge(stop).Outcome;
    }

    /// <summary>True where the stop's judgement has come out and was not said yet.</summary>
    public bool IsNews(WalkStop stop) => Outcome(stop) is { } outcome
        && (Run.Judged(stop.Name) is not { } said || (stop.Asks is null ? said.Word != outcome : said.Number < Newest(stop)));

    /// <summary>What the stop's judgement makes of the visit now.</summary>
    public Judged Judge(WalkStop stop)
    {
        var (judgement, _, since) = stop.Judgement!;
        var begun = Math.Max(Run.StartedBy, Run.ReopenedBy(stop.Name));
        return judgement.Judge(new(Visit, since is null ? begun : Run.Reached(since)?.Number ?? begun, Now));
    }
}
