using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Visits;

/// <summary>Today's state of a visit: the fold of its events. Immutable; <see cref="Apply"/> gives the next one.</summary>
public sealed record VisitState
{
    public static VisitState Empty { get; } = new();

    /// <summary>The number of events folded in: the version an append is checked against.</summary>
    public int Version { get; init; }

    public UnitSystem Units { get; init; } = UnitSystem.Us;

    /// <summary>What the units were before each event that chose others.</summary>
    internal ImmutableList<(int Number, UnitSystem Units)> UnitsBefore { get; init; } = [];

    public string? Site { get; init; }

    public string? AssetId { get; init; }

    public DateTimeOffset OpenedAt { get; init; }

    /// <summary>What is known now: the record's facts, overlaid by what was taken.</summary>
    public FactSet Facts { get; init; } = FactSet.Empty;

    /// <summary>Every value a fact had on this visit that was not withdrawn, oldest first; the last one counts.</summary>
    public ImmutableDictionary<Fact, ImmutableList<TakenFact>> History { get; init; } = ImmutableDictionary<Fact, ImmutableList<TakenFact>>.Empty;

    /// <summary>What two people found different within moments; neither counts until it is settled.</summary>
    public ImmutableDictionary<Fact, Dispute> Disputes { get; init; } = ImmutableDictionary<Fact, Dispute>.Empty;

    /// <summary>The differences that were settled, oldest first.</summary>
    public ImmutableList<SettledDispute> Settled { get; init; } = [];

    /// <summary>Values kept out of the verdict until confirmed.</summary>
    public ImmutableDictionary<Fact, QuestionedValue> Questioned { get; init; } = ImmutableDictionary<Fact, QuestionedValue>.Empty;

    /// <summary>What waits to be completed by the next message, or null.</summary>
    public OpenClarification? Clarification { get; init; }

    /// <summary>What was taken back for the reading that follows, or null.</summary>
    internal TakenFact? Corrected { get; init; }

    /// <summary>The runs of the visit's walks; one is under way, others may wait where they were left.</summary>
    public WalkRuns Runs { get; init; } = WalkRuns.None;

    /// <summary>The run under way, or null before the first.</summary>
    public WalkRun? Run => Runs.Current;

    /// <summary>The walk under way, or null before the first.</summary>
    public string? Walk => Run?.Walk;

    public string? Stop => Run?.Stop;

    /// <summary>The fact asked for at the stop, or the fault acted on, or null.</summary>
    public string? About => Run?.About;

    /// <summary>The walk offered next and not yet accepted or declined, or null.</summary>
    public string? Offered => Offers.IsEmpty ? null : Offers[^1].Walk;

    /// <summary>What was offered next, and with null what settled it, each with its event.</summary>
    internal ImmutableList<(int Number, string? Walk)> Offers { get; init; } = [];

    /// <summary>The walks that were not wanted, with the event that said so.</summary>
    public ImmutableList<(int Number, string Walk)> Declined { get; init; } = [];

    /// <summary>Where the technician is as far as the walk knows: room, unit, ...</summary>
    public string? Place { get; init; }

    /// <summary>The stops left out in the run under way, with the event that did so.</summary>
    public IEnumerable<StopMark> Skipped => Run?.Skipped ?? [];

    /// <summary>The stops confirmed in the run under way, with the event that did so.</summary>
    public IEnumerable<StopMark> Confirmed => Run?.Confirmed ?? [];

    public bool IsFinished => Run is { FinishedBy: not null };

    public bool IsPaused { get; init; }

    /// <summary>True while somebody is in danger: the call goes on only when it is told to.</summary>
    public bool IsEmergency { get; init; }

    /// <summary>The last time an emergency was called on this visit, over or not; null where none was.</summary>
    public CalledEmergency? Emergency { get; init; }

    /// <summary>The event by which a walk last put readings out of date; 0 where none did.</summary>
    public int OutdatedBy { get; init; }

    /// <summary>The event that asked whether the visit is to be closed; 0 where none did.</summary>
    public int CloseQueried { get; init; }

    /// <summary>True while the visit waits for the answer to that.</summary>
    public bool IsCloseAsked => CloseQueried > LastMessage;

    /// <summary>How the visit was closed, or null while it is open.</summary>
    public string? Outcome { get; init; }

    /// <summary>The event that closed the visit, or null.</summary>
    public int? ClosedBy { get; init; }

    /// <summary>Who has the visit now, where it was handed over.</summary>
    public string? HandedTo { get; init; }

    /// <summary>Who is on the visit with which role (on-site, helping, office), by name; empty where nobody signs in.</summary>
    public ImmutableDictionary<string, string> People { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>By what channel each person who said something was heard last.</summary>
    public ImmutableDictionary<string, string> Channels { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>When each of them was heard, who watches, who left.</summary>
    public VisitCrew Crew { get; init; } = VisitCrew.Empty;

    /// <summary>What people asked each other to read.</summary>
    public ReadingRequests Requests { get; init; } = ReadingRequests.None;

    /// <summary>What people call the equipment, or null.</summary>
    public string? Unit { get; init; }

    /// <summary>How the visit before left the equipment, or null.</summary>
    public VisitBefore? Before { get; init; }

    /// <summary>The leaks found on this visit, with the event that said so.</summary>
    public ImmutableList<(int Number, string Place)> Leaks { get; init; } = [];

    /// <summary>The cylinders: what was told of them and what they gave and took on this visit.</summary>
    public CylinderDesk Cylinders { get; init; } = CylinderDesk.Empty;

    public ImmutableList<GivenVerdict> Verdicts { get; init; } = [];

    public ImmutableHashSet<GivenCaution> Cautions { get; init; } = [];

    public ImmutableList<StoredPicture> Pictures { get; init; } = [];

    public ImmutableList<OpenReminder> Reminders { get; init; } = [];

    /// <summary>When the person who works alone is asked next, or null.</summary>
    public CheckInExpected? CheckIn { get; init; }

    public ImmutableList<NotedFollowUp> FollowUps { get; init; } = [];

    /// <summary>The faults put right on this visit, with the event that said so.</summary>
    public ImmutableList<(int Number, string Fault)> Mended { get; init; } = [];

    /// <summary>The events that no longer count.</summary>
    public ImmutableHashSet<int> Withdrawn { get; init; } = [];

    /// <summary>What "undo" would take back, the last first.</summary>
    public ImmutableStack<UndoableEvent> Undoable { get; init; } = [];

    /// <summary>The number of the last message heard; 0 before the first.</summary>
    public int LastMessage { get; init; }

    /// <summary>What was chosen under each name, with the event, oldest first.</summary>
    internal ImmutableList<(int Number, string Choice, string Option)> Choices { get; init; } = [];

    /// <summary>The option chosen last under a name on this visit, or null.</summary>
    public string? Chosen(string choice) => Choices.FindLast(c => c.Choice == choice).Option;

    /// <summary>The last verdict said and not withdrawn, or null.</summary>
    public GivenVerdict? LastVerdict => Verdicts.IsEmpty ? null : Verdicts[^1];

    /// <summary>The established fault whose readings went out of date with its repair, until it is said to be put right; otherwise null.</summary>
    public string? UnderRepair => LastVerdict is { Standing: "established" } last && OutdatedBy > last.Number && !Mended.Exists(m => m.Number > last.Number) ? last.Fault : null;

    /// <summary>The next state. An event of the same log always gives the same state.</summary>
    public VisitState Apply(VisitEvent happened) => VisitFold.Apply(this, happened);

    public static VisitState Fold(IEnumerable<VisitEvent> events) => events.Aggregate(Empty, (state, happened) => state.Apply(happened));
}
