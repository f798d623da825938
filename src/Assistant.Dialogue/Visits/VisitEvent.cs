using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Assistant.Dialogue.Visits;

/// <summary>
/// One thing that happened on a visit. The log of events is append-only and today's state is its fold
/// (<see cref="VisitState.Apply"/>); a correction is a new event that points at the old one.
/// The kind names are stored: once released they never change.
/// </summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(VisitOpened), "visit-opened")]
[JsonDerivedType(typeof(MessageHeard), "message-heard")]
[JsonDerivedType(typeof(FactTaken), "fact-taken")]
[JsonDerivedType(typeof(FactQuestioned), "fact-questioned")]
[JsonDerivedType(typeof(ClarificationAsked), "clarification-asked")]
[JsonDerivedType(typeof(EventWithdrawn), "event-withdrawn")]
[JsonDerivedType(typeof(StopReached), "stop-reached")]
[JsonDerivedType(typeof(StopSkipped), "stop-skipped")]
[JsonDerivedType(typeof(StopConfirmed), "stop-confirmed")]
[JsonDerivedType(typeof(WalkStarted), "walk-started")]
[JsonDerivedType(typeof(WalkFinished), "walk-finished")]
[JsonDerivedType(typeof(VerdictGiven), "verdict-given")]
[JsonDerivedType(typeof(CautionGiven), "caution-given")]
[JsonDerivedType(typeof(FaultMended), "fault-mended")]
[JsonDerivedType(typeof(VisitPaused), "visit-paused")]
[JsonDerivedType(typeof(VisitResumed), "visit-resumed")]
[JsonDerivedType(typeof(PictureTaken), "picture-taken")]
[JsonDerivedType(typeof(ReminderSet), "reminder-set")]
[JsonDerivedType(typeof(FollowUpNoted), "follow-up-noted")]
[JsonDerivedType(typeof(HandedOver), "handed-over")]
[JsonDerivedType(typeof(VisitClosed), "visit-closed")]
[JsonDerivedType(typeof(PersonErased), "person-erased")]
[JsonDerivedType(typeof(CylinderUsed), "cylinder-used")]
[JsonDerivedType(typeof(CylinderNoted), "cylinder-noted")]
[JsonDerivedType(typeof(LeakFound), "leak-found")]
[JsonDerivedType(typeof(PersonJoined), "person-joined")]
[JsonDerivedType(typeof(PersonLeft), "person-left")]
[JsonDerivedType(typeof(WalkResumed), "walk-resumed")]
[JsonDerivedType(typeof(WalkOffered), "walk-offered")]
[JsonDerivedType(typeof(OfferDeclined), "offer-declined")]
[JsonDerivedType(typeof(StopChosen), "stop-chosen")]
[JsonDerivedType(typeof(StopsReopened), "stops-reopened")]
[JsonDerivedType(typeof(JudgementGiven), "judgement-given")]
[JsonDerivedType(typeof(CheckInExpected), "check-in-expected")]
[JsonDerivedType(typeof(CheckInEnded), "check-in-ended")]
[JsonDerivedType(typeof(WatchBegan), "watch-began")]
[JsonDerivedType(typeof(WatchEnded), "watch-ended")]
[JsonDerivedType(typeof(LeaveQueried), "leave-queried")]
[JsonDerivedType(typeof(ReadingsDiffer), "readings-differ")]
[JsonDerivedType(typeof(ReadingRequested), "reading-requested")]
[JsonDerivedType(typeof(RequestDropped), "request-dropped")]
[JsonDerivedType(typeof(RequestTold), "request-told")]
[JsonDerivedType(typeof(UnitsChosen), "units-chosen")]
[JsonDerivedType(typeof(CloseQueried), "close-queried")]
[JsonDerivedType(typeof(ReadingsOutdated), "readings-outdated")]
public abstract record VisitEvent
{
    /// <summary>When it happened, by the clock of the one who recorded it.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Who said or did it.</summary>
    [Personal]
    public required string By { get; init; }

    /// <summary>The place in the visit's log, from 1; given by the fold, not stored in the body.</summary>
    [JsonIgnore]
    public int Number { get; init; }
}

/// <summary>A visit begins: where, and what is known of the unit from its record (fact name to text as a person would write it).</summary>
public sealed record VisitOpened(string Site, string? AssetId, string Units, ImmutableDictionary<string, string> KnownFacts) : VisitEvent
{
    /// <summary>What people call the equipment, or null.</summary>
    public string? Unit { get; init; }

    /// <summary>How the visit before left the equipment, or null where there was none.</summary>
    public VisitBefore? Before { get; init; }

    /// <summary>What the record knows beyond the facts (valve body, orifice, settings), name to text, or null.</summary>
    public IReadOnlyDictionary<string, string>? Details { get; init; }

    /// <summary>What changed on the equipment since the visit before opened, or null.</summary>
    public IReadOnlyList<DetailChanged>? Changed { get; init; }

    /// <summary>The house's cylinders that were used last, or null where there are none.</summary>
    public IReadOnlyList<KnownCylinder>? Cylinders { get; init; }
}

/// <summary>How an earlier visit left the equipment: codes and places only, nobody's words.</summary>
/// <param name="Fault">The last verdict's fault, or null.</param>
/// <param name="Standing">Its standing, or null.</param>
/// <param name="Mended">The faults put right.</param>
/// <param name="FollowUps">The days something was left to be done by.</param>
/// <param name="Leaks">Every leak found on the equipment on any earlier visit, oldest first.</param>
public sealed record VisitBefore(
    DateOnly On, string? Fault, string? Standing, ImmutableArray<string> Mended, ImmutableArray<DateOnly> FollowUps, ImmutableArray<EarlierLeak> Leaks);

/// <summary>A detail or a setting of the equipment that is no longer what it was.</summary>
public sealed record DetailChanged(string Name, string Then, string Now);

/// <summary>A leak found on an earlier visit.</summary>
public sealed record EarlierLeak(string Place, DateOnly On);

/// <summary>A leak was found. Its place belongs to the equipment and stays on record when a person is erased.</summary>
public sealed record LeakFound(string Place) : VisitEvent;

/// <summary>A message as it was said or typed.</summary>
public sealed record MessageHeard(string MessageId, string Channel, [property: Personal] string Text) : VisitEvent;

/// <summary>A reading or an observation was taken. For a reading <paramref name="Value"/> and <paramref name="Unit"/>, otherwise <paramref name="Word"/>.</summary>
/// <param name="Stop">The stop of the walk that asked for it, or null where it was volunteered.</param>
public sealed record FactTaken(string Fact, double? Value, string? Unit, string? Word, string Place, string? Stop) : VisitEvent;

/// <summary>A value was heard that cannot be, or does not fit: it is kept out of the verdict until confirmed.</summary>
public sealed record FactQuestioned(string Fact, double? Value, string? Unit, string? Word, string Reason) : VisitEvent;

/// <summary>Something was left open and is asked back.</summary>
/// <param name="What">unit, fact, value or sign; range for a number that can not be, span for two where one is read.</param>
/// <param name="Heard">The number as heard, where there is one, kept for "psi" as the whole answer.</param>
public sealed record ClarificationAsked(string What, string? Fact, double? Heard) : VisitEvent
{
    /// <summary>The message that left it open, which the next one completes.</summary>
    [Personal]
    public string Text { get; init; } = "";
}

/// <summary>An earlier event no longer counts ("undo", or a correction).</summary>
public sealed record EventWithdrawn(int Withdrawn) : VisitEvent
{
    /// <summary>Of two people's readings that differed, the event of the one that counts from here on; null for any other withdrawal.</summary>
    public int? InFavourOf { get; init; }

    /// <summary>True where the reading right behind it stands in its place: what was said was said wrong, and the walk goes on where it is.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool IsCorrection { get; init; }
}

/// <summary>A verdict was said. Codes and standings in the contract's spelling.</summary>
public sealed record VerdictGiven(string Fault, string Standing, string Text, ImmutableArray<string> Because) : VisitEvent;

/// <summary>The technician put a fault right: what was read before no longer says how the plant is now, and is read again.</summary>
/// <param name="Outdates">The facts that are to be taken afresh.</param>
public sealed record FaultMended(string Fault, ImmutableArray<string> Outdates) : VisitEvent;

/// <summary>A caution was said to a person at a place.</summary>
public sealed record CautionGiven(string Caution, string Place) : VisitEvent;

public sealed record VisitPaused : VisitEvent
{
    /// <summary>True where somebody is in danger: the call then goes on only when it is told to.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool IsEmergency { get; init; }
}

public sealed record VisitResumed : VisitEvent;

/// <summary>A picture was stored under <paramref name="PictureId"/> (its content is kept beside the log).</summary>
public sealed record PictureTaken(string PictureId, [property: Personal] string Caption, string? Stop) : VisitEvent;

public sealed record ReminderSet(DateTimeOffset Due, [property: Personal] string About) : VisitEvent;

/// <summary>Something to be done later, with its date.</summary>
public sealed record FollowUpNoted(DateOnly Due, [property: Personal] string What) : VisitEvent;

/// <summary>The visit went over to another.</summary>
public sealed record HandedOver([property: Personal] string To) : VisitEvent
{
    /// <summary>Who was on site until then and helps from then on, where <see cref="To"/> is on the visit and is on site instead; otherwise null.</summary>
    [Personal]
    public string? From { get; init; }

    /// <summary>By what the records know the two, or null.</summary>
    [Personal]
    public string? FromId { get; init; }

    /// <inheritdoc cref="FromId"/>
    [Personal]
    public string? ToId { get; init; }
}

public sealed record VisitClosed(string Outcome) : VisitEvent;

/// <summary>A person asked to be erased: what was personal in these events of the log is gone, and the log still holds.</summary>
public sealed record PersonErased(ImmutableArray<int> Events) : VisitEvent;

/// <summary>Refrigerant went into or out of a cylinder, by its scale before and after. Purposes and kinds in the ledger's words, kebab-case.</summary>
/// <param name="EntryId">Identifies the use; heard twice it counts once.</param>
/// <param name="WaterCapacityGrams">The mass of water the cylinder would hold, where it is known.</param>
public sealed record CylinderUsed(
    string EntryId, string Tag, string CylinderKind, string Purpose, string Refrigerant, long TareGrams, long GrossBeforeGrams, long GrossAfterGrams, long? WaterCapacityGrams) : VisitEvent
{
    /// <summary>Why it was done, where it was said: top-up, after-repair, new-installation, retrofit or seasonal. The leak rules ask for it.</summary>
    public string? Reason { get; init; }

    /// <summary>The use that this one puts right: it counts no more while this one does. Null where it puts none right.</summary>
    public int? Replaces { get; init; }

    /// <summary>The uses that count: without those another one put right.</summary>
    public static IEnumerable<CylinderUsed> Counting(IEnumerable<CylinderUsed> uses)
    {
        var all = uses.ToList();
        return all.Where(u => !all.Exists(r => r.Replaces == u.Number));
    }
}

/// <summary>A person joined the visit, or is on it with another role from now on.</summary>
/// <param name="Role">on-site, helping or office.</param>
public sealed record PersonJoined([property: Personal] string PersonId, string Role) : VisitEvent;

/// <summary>A person is no longer on the visit.</summary>
public sealed record PersonLeft([property: Personal] string PersonId) : VisitEvent;
