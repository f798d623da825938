using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Visits;

/// <summary>What each kind of event does to the state.</summary>
internal static class VisitFold
{
    public static VisitState Apply(VisitState state, VisitEvent happened)
    {
        var number = state.Version + 1;
        var next = state with { Version = number };
        return happened switch
        {
            VisitOpened e => next with
            {
                Site = e.Site,
                AssetId = e.AssetId,
                Units = UnitsOf(e.Units),
                OpenedAt = e.At,
                Unit = e.Unit,
                Before = e.Before,
                Cylinders = CylinderDesk.Empty with { Known = CylinderDesk.Empty.Known.SetItems((e.Cylinders ?? []).Select(c => KeyValuePair.Create(c.Tag, c))) },
            },
            MessageHeard e => next with { LastMessage = number, Channels = next.Channels.SetItem(e.By, e.Channel), Crew = next.Crew.Hear(e.By, e.At) },
            FactTaken e => Take(next, e, number),
            ReadingsDiffer e => Differ(next, e),
            FactQuestioned e => Question(next, e, number),
            ClarificationAsked e => next with
            {
                Clarification = new(number, e.What, e.Fact is null ? null : FactCatalogue.Find(e.Fact), e.Heard, e.Text),
            },
            EventWithdrawn { InFavourOf: { } counts } e => Settle(next, e.Withdrawn, counts, number),
            EventWithdrawn { IsCorrection: true } e => Withdraw(next, e.Withdrawn, leadsBack: false) with { Corrected = next.History.Values.SelectMany(entries => entries).FirstOrDefault(t => t.Number == e.Withdrawn) },
            EventWithdrawn e => Withdraw(next, e.Withdrawn),
            UnitsChosen e => Undoable(next with { Units = UnitsOf(e.Units), UnitsBefore = next.UnitsBefore.Add((number, next.Units)) }, number),
            ReadingsOutdated e => Undoable(Outdate(next, e.Facts, e, number) with { OutdatedBy = number }, number),
            CloseQueried => next with { CloseQueried = number },
            FaultMended e => Mend(next, e, number),
            VerdictGiven e => next with { Verdicts = next.Verdicts.Add(new(number, e.Fault, e.Standing, e.Text, e.At)) },
            CautionGiven e => next with { Cautions = next.Cautions.Add(new(e.Caution, e.By, e.Place, DateOnly.FromDateTime(e.At.Date))) },
            VisitPaused e => next with
            {
                IsPaused = true,
                IsEmergency = e.IsEmergency || next.IsEmergency,
                Emergency = e.IsEmergency ? new(e.By, e.At) : next.Emergency,
            },
            VisitResumed => next with { IsPaused = false, IsEmergency = false },
            PictureTaken e => next with { Pictures = next.Pictures.Add(new(number, e.PictureId, e.Caption, e.Stop, e.At, e.By)) },
            ReminderSet e => Undoable(next with { Reminders = next.Reminders.Add(new(number, e.Due, e.About)) }, number),
            FollowUpNoted e => Undoable(next with { FollowUps = next.FollowUps.Add(new(number, e.Due, e.What)) }, number),
            LeakFound e => Undoable(next with { Leaks = next.Leaks.Add((number, e.Place)) }, number),
            CylinderNoted or CylinderUsed => Undoable(next with { Cylinders = next.Cylinders.Add(happened with { Number = number }) }, number),
            PersonJoined e => next with { People = next.People.SetItem(e.By, e.Role), Crew = next.Crew.Join(e.By, e.PersonId) },
            PersonLeft e => next with { People = next.People.Remove(e.By), Crew = next.Crew.Leave(e.By, VisitCrew.RoleOf(next, e.By)) },
            WatchBegan e => next with { Crew = next.Crew.Watch(e.By, e.Channel) },
            WatchEnded e => next with { Crew = next.Crew.EndWatch(e.By) },
            LeaveQueried e => next with { Crew = next.Crew.Query(e.By, e.At) },
            CheckInExpected e => next with { CheckIn = e with { Number = number } },
            CheckInEnded => next with { CheckIn = null },
            ReadingRequested e when FactCatalogue.Find(e.Fact) is { } fact =>
                Undoable(next with { Requests = next.Requests.Add(new(number, fact, e.By, e.At, next.Channels.GetValueOrDefault(e.By, ""))) }, number),
            RequestDropped e => next with { Requests = next.Requests.Drop(e.Request, e.By) },
            RequestTold e => next with { Requests = next.Requests.Tell(e.Request) },
            HandedOver e => HandOver(next, e),
            VisitClosed e => Undoable(next with { Outcome = e.Outcome, ClosedBy = number, Clarification = null }, number),
            _ => WalkFold.Apply(next, happened, number),
        };
    }

    private static VisitState Take(VisitState state, FactTaken e, int number)
    {
        if (FactCatalogue.Find(e.Fact) is not { } fact || Value(fact, e.Value, e.Unit, e.Word) is not { } value)
        {
            return state;
        }

        var entries = FactHistory.With(state.History.GetValueOrDefault(fact, []), new(number, value, e.At, e.By, e.Place, e.Stop) { InsteadOf = state.Corrected?.Value?.Fact == fact ? state.Corrected : null });
        return Undoable(
            state with
            {
                Facts = FactHistory.Apply(state.Facts, fact, entries),
                History = state.History.SetItem(fact, entries),
                Questioned = state.Questioned.Remove(fact),
                Disputes = state.Disputes.Remove(fact),
                Requests = state.Requests.Answer(number, fact, e.At, e.By),
                Clarification = null,
                Corrected = null,
            },
            number);
    }

    private static VisitState Differ(VisitState state, ReadingsDiffer e)
    {
        if (FactCatalogue.Find(e.Fact) is not { } fact || !state.History.TryGetValue(fact, out var entries)
            || entries.Find(t => t.Number == e.One) is not { } one || entries.Find(t => t.Number == e.Other) is not { } other)
        {
            return state;
        }

        return state with { Disputes = state.Disputes.SetItem(fact, new(one, other)), Facts = state.Facts.Without(fact) };
    }

    private static VisitState Question(VisitState state, FactQuestioned e, int number) =>
        FactCatalogue.Find(e.Fact) is { } fact && Value(fact, e.Value, e.Unit, e.Word) is { } value
            ? Undoable(
                state with { Questioned = state.Questioned.SetItem(fact, new(number, value, e.Reason)), Clarification = null },
                number)
            : state;

    private static VisitState Mend(VisitState state, FaultMended e, int number)
    {
        var outdated = Outdate(state, e.Outdates, e, number);
        var (facts, history) = (outdated.Facts, outdated.History);

        // What was put right pulls the room down from here: how warm it still is speaks against nothing.
        var pullingDown = new Observation(FactCatalogue.PullingDown, "yes");
        facts = facts.With(pullingDown);
        history = history.SetItem(FactCatalogue.PullingDown, history.GetValueOrDefault(FactCatalogue.PullingDown, []).Add(new(number, pullingDown, e.At, e.By, null, null)));
        return Undoable(outdated with { Facts = facts, History = history, Mended = state.Mended.Add((number, e.Fault)), Clarification = null }, number);
    }

    private static VisitState Outdate(VisitState state, IEnumerable<string> names, VisitEvent by, int number)
    {
        var (facts, history, disputes) = (state.Facts, state.History, state.Disputes);
        foreach (var fact in names.Select(FactCatalogue.Find).OfType<Fact>())
        {
            // What was read before and comes in later is out of date too.
            var entries = FactHistory.With(history.GetValueOrDefault(fact, []), new(number, null, by.At, by.By, null, null));
            (facts, history, disputes) = (FactHistory.Apply(facts, fact, entries), history.SetItem(fact, entries), disputes.Remove(fact));
        }

        return state with { Facts = facts, History = history, Disputes = disputes };
    }

    // Of two readings one counts: the other is kept aside, so that "undo" can bring the difference back.
    private static VisitState Settle(VisitState state, int withdrawn, int counts, int number)
    {
        var after = Withdraw(state, withdrawn);
        var settled = state.Disputes.Where(d => d.Value.One.Number == withdrawn || d.Value.Other.Number == withdrawn)
            .Select(d => new SettledDispute(number, d.Key, d.Value.One.Number == withdrawn ? d.Value.One : d.Value.Other, counts));
        return Undoable(after with { Settled = after.Settled.AddRange(settled) }, number);
    }

    private static VisitState Withdraw(VisitState state, int withdrawn, bool leadsBack = true)
    {
        var (facts, history, isReading) = (state.Facts, state.History, false);
        var disputes = state.Disputes.RemoveRange(state.Disputes.Where(d => d.Value.One.Number == withdrawn || d.Value.Other.Number == withdrawn).Select(d => d.Key));
        foreach (var (fact, entries) in state.History)
        {
            var left = entries.RemoveAll(entry => entry.Number == withdrawn);
            if (left.Count == entries.Count)
            {
                continue;
            }

            isReading = true;
            history = history.SetItem(fact, left);
            facts = FactHistory.Apply(facts, fact, left, disputes.ContainsKey(fact));
        }

        return state with
        {
            Facts = facts,
            History = history,
            Disputes = disputes,
            Settled = state.Settled.RemoveAll(s => s.Number == withdrawn),
            Requests = state.Requests.Without(withdrawn),
            Questioned = state.Questioned.RemoveRange(state.Questioned.Where(q => q.Value.Number == withdrawn).Select(q => q.Key)),
            Units = state.UnitsBefore.Find(u => u.Number == withdrawn) is { Number: > 0 } chosen ? chosen.Units : state.Units,
            OutdatedBy = state.OutdatedBy == withdrawn ? 0 : state.OutdatedBy,
            UnitsBefore = state.UnitsBefore.RemoveAll(u => u.Number == withdrawn),
            Clarification = state.Reminders.Exists(r => r.Number == withdrawn) ? state.Clarification : null,
            Runs = state.Runs.Without(withdrawn, leadsBack: isReading && leadsBack),
            Choices = state.Choices.RemoveAll(c => c.Number == withdrawn),
            Offers = state.Offers.RemoveAll(o => o.Number == withdrawn),
            Declined = state.Declined.RemoveAll(d => d.Number == withdrawn),
            Mended = state.Mended.RemoveAll(m => m.Number == withdrawn),
            Verdicts = state.Verdicts.RemoveAll(v => v.Number == withdrawn),
            Reminders = state.Reminders.RemoveAll(r => r.Number == withdrawn),
            FollowUps = state.FollowUps.RemoveAll(f => f.Number == withdrawn),
            Leaks = state.Leaks.RemoveAll(l => l.Number == withdrawn),
            Cylinders = state.Cylinders.Without(withdrawn),
            Outcome = state.ClosedBy == withdrawn ? null : state.Outcome,
            ClosedBy = state.ClosedBy == withdrawn ? null : state.ClosedBy,
            Withdrawn = state.Withdrawn.Add(withdrawn),
            Undoable = Without(state.Undoable, withdrawn),
        };
    }

    // The role on site goes with the visit: who had it helps from then on.
    private static VisitState HandOver(VisitState state, HandedOver e) => e.From is not { Length: > 0 } from
        ? state with { HandedTo = e.To }
        : state with
        {
            HandedTo = e.To,
            People = (from == e.To ? state.People : state.People.SetItem(from, VisitCrew.Helping)).SetItem(e.To, VisitCrew.OnSite),
            Crew = from == e.To ? state.Crew : state.Crew.HandOver(from, e.To),
        };

    internal static VisitState Undoable(VisitState state, int number) =>
        state with { Undoable = state.Undoable.Push(new(number, state.LastMessage)) };

    private static ImmutableStack<UndoableEvent> Without(ImmutableStack<UndoableEvent> stack, int number) =>
        ImmutableStack.CreateRange(stack.Where(u => u.Number != number).Reverse());

    private static UnitSystem UnitsOf(string units) => units == "metric" ? UnitSystem.Metric : UnitSystem.Us;

    private static FactValue? Value(Fact fact, double? value, string? unit, string? word)
    {
        if (word is not null)
        {
            return new Observation(fact, word);
        }

        return value is { } number && FactUnits.Find(fact, unit ?? "") is { } known ? new Reading(fact, number, known) : null;
    }
}
