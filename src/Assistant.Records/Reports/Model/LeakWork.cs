using System.Collections.Frozen;
using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Regulations;

namespace Assistant.Records.Reports.Model;

/// <summary>
/// What was done about an equipment's leaks, as the visits to it tell it and the leak rules count it. Only what stands on record is taken:
/// a repair counts for a leak that was found, a test for a repair, and where the order is in doubt the dates stay the stricter ones.
/// </summary>
/// <param name="Events">Repairs, tests, running as usual and inspections, in order of time.</param>
/// <param name="LeakVisits">The visits on which a leak was found or repaired: what they recovered was recovered for that.</param>
/// <param name="RepairVisits">The visits on which a leak was repaired.</param>
public sealed record LeakWork(ImmutableArray<ServiceEvent> Events, ImmutableHashSet<string> LeakVisits, ImmutableHashSet<string> RepairVisits)
{
    public static LeakWork None { get; } = new([], [], []);

    /// <summary>The work that these events tell of.</summary>
    /// <param name="told">Standing events of all visits to one asset, in order of time.</param>
    public static LeakWork Of(IEnumerable<(string VisitId, VisitEvent Event)> told)
    {
        ArgumentNullException.ThrowIfNull(told);
        var fold = new LeakWorkFold();
        foreach (var (visitId, happened) in told)
        {
            fold.Take(visitId, happened);
        }

        return fold.Work;
    }
}

/// <summary>Where the mending of a leak stands while the events are gone through.</summary>
internal sealed class LeakWorkFold
{
    /// <summary>The plans of the repair walk after which the system is tight again; shut off or made safe it is not.</summary>
    public static readonly FrozenSet<string> Mends = FrozenSet.Create("rebuild", "make-anew", "replace-flared", "braze");

    private readonly ImmutableArray<ServiceEvent>.Builder events = ImmutableArray.CreateBuilder<ServiceEvent>();
    private readonly HashSet<string> leakVisits = [];
    private readonly HashSet<string> repairVisits = [];
    private readonly HashSet<(string VisitId, string Choice)> tight = [];
    private readonly HashSet<string> inPart = [];
    private string? plan;
    private bool isOpen;
    private bool isUntested;
    private bool isRunning;
    private DateOnly? tested;

    public LeakWork Work => new(events.ToImmutable(), [.. leakVisits], [.. repairVisits]);

    public void Take(string visitId, VisitEvent happened)
    {
        var day = DateOnly.FromDateTime(happened.At.DateTime);
        switch (happened)
        {
            case LeakFound:
                leakVisits.Add(visitId);
                isOpen = true;
                break;
            case JudgementGiven { Judgement: "repair-plan" } judged:
                plan = judged.Outcome;
                break;
            case WalkFinished { Walk: "repair-choice" } when isOpen && plan is not null && Mends.Contains(plan):
            case FaultMended { Fault: "undercharge" } when isOpen && leakVisits.Contains(visitId):
                Repair(visitId, day);
                break;
            case JudgementGiven { Judgement: "nitrogen-hold", Outcome: "holds" } or JudgementGiven { Judgement: "vacuum-decay", Outcome: "tight" } when isOpen || isUntested:
                Repair(visitId, day);
                Test(day, VerificationTest.Initial, passed: true);
                break;
            case JudgementGiven { Judgement: "nitrogen-hold", Outcome: "leaking" } or JudgementGiven { Judgement: "vacuum-decay", Outcome: "leak" } when isUntested || tested is not null:
                Test(day, VerificationTest.Initial, passed: false);
                break;
            case StopChosen { Walk: "close-out" } chosen:
                TakeCaps(visitId, chosen, day);
                break;
            case JudgementGiven { Judgement: "final-readings", Outcome: "on-target" } when tested is { } since:
                Run(visitId, day, since);
                break;
            case WalkStarted { Walk: "leak-search" }:
                inPart.Remove(visitId);
                break;
            case StopSkipped { Walk: "leak-search" }:
                inPart.Add(visitId);
                break;
            case JudgementGiven { Judgement: "leak-areas" } when !inPart.Contains(visitId):
                events.Add(new LeakInspected(day));
                break;
        }
    }

    private void Repair(string visitId, DateOnly day)
    {
        leakVisits.Add(visitId);
        if (isOpen)
        {
            events.Add(new LeakRepaired(day));
            repairVisits.Add(visitId);
        }

        (isOpen, isUntested, plan) = (false, true, null);
    }

    private void Test(DateOnly day, VerificationTest test, bool passed)
    {
        events.Add(new VerificationTested(day, test, passed));
        (isOpen, isUntested, isRunning, tested) = (!passed, false, false, passed && test == VerificationTest.Initial ? day : null);
    }

    // Gone over with the caps off and on: what leaks there on the day of the first test takes that test back.
    private void TakeCaps(string visitId, StopChosen chosen, DateOnly day)
    {
        if (chosen is { Choice: "tight-caps-off" or "tight-caps-on", Option: "tight" })
        {
            tight.Add((visitId, chosen.Choice));
        }
        else if (chosen is { Choice: "tight-caps-off" or "tight-caps-on", Option: "leaking" } && tested is { } since)
        {
            Test(day, day > since ? VerificationTest.FollowUp : VerificationTest.Initial, passed: false);
        }
    }

    // Only on a later day can the two tests be told apart.
    private void Run(string visitId, DateOnly day, DateOnly since)
    {
        if (day > since && tight.Contains((visitId, "tight-caps-off")) && tight.Contains((visitId, "tight-caps-on")))
        {
            Test(day, VerificationTest.FollowUp, passed: true);
        }
        else if (!isRunning)
        {
            events.Add(new NormalRunningReached(day));
            isRunning = true;
        }
    }
}
