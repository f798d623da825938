using System.Collections.Immutable;
using System.Text.Json;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using CsCheck;

namespace Assistant.Dialogue.Tests.Visits;

public sealed class VisitFoldTests
{
    private static readonly DateTimeOffset At = new(2026, 7, 14, 9, 0, 0, TimeSpan.FromHours(2));

    private static readonly Gen<VisitEvent> AnyEvent = Gen.OneOf<VisitEvent>(
        Gen.Select(Gen.OneOf("box_temperature", "setpoint"), Gen.Double[-40, 120]).Select((fact, value) => (VisitEvent)Taken(fact, value)),
        Gen.OneOf("none", "light", "blocked").Select(word => (VisitEvent)new FactTaken("coil_ice", null, null, word, "room", "coil-ice") { At = At, By = "ada" }),
        Gen.Double[200, 400].Select(value => (VisitEvent)new FactQuestioned("box_temperature", value, "degF", null, "too warm") { At = At, By = "ada" }),
        Gen.Int[1, 12].Select(number => (VisitEvent)new EventWithdrawn(number) { At = At, By = "ada" }),
        Gen.OneOf("display", "fans").Select(stop => (VisitEvent)new StopSkipped("warm-box", stop) { At = At, By = "ada" }),
        Gen.OneOf("hazards", "act").Select(stop => (VisitEvent)new StopConfirmed("warm-box", stop) { At = At, By = "ada" }),
        Gen.Int[1, 99].Select(id => (VisitEvent)new MessageHeard($"m{id}", "chat", "text") { At = At, By = "ada" }),
        Gen.Const((VisitEvent)new FaultMended("coil-iced", ["coil_ice"]) { At = At, By = "ada" }),
        Gen.OneOf("unit", "sign").Select(what => (VisitEvent)new ClarificationAsked(what, "setpoint", 4) { At = At, By = "ada", Text = "4" }),
        Gen.OneOf("vacuum", "pressure-hold").Select(walk => (VisitEvent)new WalkStarted(walk) { At = At, By = "ada" }),
        Gen.OneOf("warm-box", "vacuum").Select(walk => (VisitEvent)new WalkResumed(walk) { At = At, By = "ada" }),
        Gen.OneOf("warm-box", "vacuum").Select(walk => (VisitEvent)new WalkFinished(walk) { At = At, By = "ada" }),
        Gen.Const((VisitEvent)new StopsReopened("vacuum", ["pump", "isolate"]) { At = At, By = "ada" }),
        Gen.Const((VisitEvent)new StopChosen("leak-search", "flare", "flare-leaks", "yes") { At = At, By = "ada" }),
        Gen.Const((VisitEvent)new VisitPaused { At = At, By = "ada" }),
        Gen.Const((VisitEvent)new VisitClosed("no fault established") { At = At, By = "ada" }));

    [Fact]
    public void A_prefix_and_then_the_rest_folds_to_the_same_as_the_whole() =>
        Gen.Select(AnyEvent.List[0, 14], Gen.Int[0, 14]).Sample((log, cut) =>
            AssertSame(VisitState.Fold(log), log.Skip(cut).Aggregate(VisitState.Fold(log.Take(cut)), (state, e) => state.Apply(e))));

    [Fact]
    public void Withdrawing_the_last_fact_restores_what_was_known_before() =>
        Gen.Select(AnyEvent.List[0, 14], Gen.Double[-40, 120]).Sample((log, value) =>
        {
            var before = VisitState.Fold(log);
            var after = before.Apply(Taken("box_temperature", value)).Apply(new EventWithdrawn(before.Version + 1) { At = At, By = "ada" });
            Assert.Equal(Facts(before), Facts(after));
        });

    [Fact]
    public void The_log_read_back_from_json_folds_to_the_same_state() =>
        AnyEvent.List[0, 14].Sample(log =>
        {
            var stored = JsonSerializer.Serialize<IEnumerable<VisitEvent>>(log);
            AssertSame(VisitState.Fold(log), VisitState.Fold(JsonSerializer.Deserialize<List<VisitEvent>>(stored)!));
        });

    [Fact]
    public void A_correction_counts_and_the_history_keeps_both_with_who_when_and_where()
    {
        var state = VisitState.Fold([Taken("setpoint", 38), Taken("setpoint", 36) with { By = "ben", At = At.AddMinutes(5) }]);

        Assert.Equal(new Reading(FactCatalogue.Setpoint, 36, UnitOfMeasure.Fahrenheit), state.Facts.Find(FactCatalogue.Setpoint));
        Assert.Equal(
            [(1, "ada", At, "room"), (2, "ben", At.AddMinutes(5), "room")],
            state.History[FactCatalogue.Setpoint].Select(t => (t.Number, t.By, t.At, t.Place!)));
    }

    [Fact]
    public void A_questioned_value_stays_out_of_the_facts_until_it_is_taken()
    {
        var questioned = VisitState.Fold([new FactQuestioned("box_temperature", 400, "degF", null, "too warm") { At = At, By = "ada" }]);
        Assert.Equal((false, true), (questioned.Facts.Has(FactCatalogue.BoxTemperature), questioned.Questioned.ContainsKey(FactCatalogue.BoxTemperature)));

        var taken = questioned.Apply(Taken("box_temperature", 400));
        Assert.Equal((true, false), (taken.Facts.Has(FactCatalogue.BoxTemperature), taken.Questioned.ContainsKey(FactCatalogue.BoxTemperature)));
    }

    [Fact]
    public void A_mended_fault_makes_its_readings_out_of_date_and_taking_that_back_makes_them_count_again()
    {
        var mended = VisitState.Fold([Taken("box_temperature", 50), new FaultMended("excess-load", ["box_temperature", "setpoint"]) { At = At, By = "ada" }]);
        Assert.False(mended.Facts.Has(FactCatalogue.BoxTemperature));

        var again = mended.Apply(new EventWithdrawn(2) { At = At, By = "ada" });
        Assert.Equal((true, 0), (again.Facts.Has(FactCatalogue.BoxTemperature), again.Mended.Count));
    }

    [Fact]
    public void What_was_put_right_pulls_the_room_down_until_that_is_taken_back()
    {
        var mended = VisitState.Fold([new FaultMended("excess-load", ["door_condition"]) { At = At, By = "ada" }]);

        Assert.True(mended.Facts.Is(FactCatalogue.PullingDown, "yes"));
        Assert.False(mended.Apply(new EventWithdrawn(1) { At = At, By = "ada" }).Facts.Has(FactCatalogue.PullingDown));
    }

    [Theory]
    [InlineData(typeof(VisitOpened), "visit-opened")]
    [InlineData(typeof(MessageHeard), "message-heard")]
    [InlineData(typeof(FactTaken), "fact-taken")]
    [InlineData(typeof(FactQuestioned), "fact-questioned")]
    [InlineData(typeof(ClarificationAsked), "clarification-asked")]
    [InlineData(typeof(EventWithdrawn), "event-withdrawn")]
    [InlineData(typeof(StopReached), "stop-reached")]
    [InlineData(typeof(StopSkipped), "stop-skipped")]
    [InlineData(typeof(StopConfirmed), "stop-confirmed")]
    [InlineData(typeof(WalkStarted), "walk-started")]
    [InlineData(typeof(WalkFinished), "walk-finished")]
    [InlineData(typeof(VerdictGiven), "verdict-given")]
    [InlineData(typeof(CautionGiven), "caution-given")]
    [InlineData(typeof(FaultMended), "fault-mended")]
    [InlineData(typeof(VisitPaused), "visit-paused")]
    [InlineData(typeof(VisitResumed), "visit-resumed")]
    [InlineData(typeof(PictureTaken), "picture-taken")]
    [InlineData(typeof(ReminderSet), "reminder-set")]
    [InlineData(typeof(FollowUpNoted), "follow-up-noted")]
    [InlineData(typeof(HandedOver), "handed-over")]
    [InlineData(typeof(VisitClosed), "visit-closed")]
    [InlineData(typeof(LeakFound), "leak-found")]
    [InlineData(typeof(WalkResumed), "walk-resumed")]
    [InlineData(typeof(WalkOffered), "walk-offered")]
    [InlineData(typeof(OfferDeclined), "offer-declined")]
    [InlineData(typeof(StopChosen), "stop-chosen")]
    [InlineData(typeof(StopsReopened), "stops-reopened")]
    [InlineData(typeof(JudgementGiven), "judgement-given")]
    [InlineData(typeof(CheckInExpected), "check-in-expected")]
    [InlineData(typeof(CheckInEnded), "check-in-ended")]
    public void A_kind_name_once_stored_never_changes(Type type, string kind)
    {
        var named = typeof(VisitEvent).GetCustomAttributes(typeof(System.Text.Json.Serialization.JsonDerivedTypeAttribute), false)
            .Cast<System.Text.Json.Serialization.JsonDerivedTypeAttribute>()
            .Single(a => a.DerivedType == type);

        Assert.Equal(kind, named.TypeDiscriminator);
    }

    [Fact]
    public void An_opened_visit_keeps_its_site_units_and_start()
    {
        var state = VisitState.Fold([new VisitOpened("Upper Dairy", "unit-7", "metric", ImmutableDictionary<string, string>.Empty) { At = At, By = "ada" }]);

        Assert.Equal(("Upper Dairy", "unit-7", UnitSystem.Metric, At), (state.Site, state.AssetId, state.Units, state.OpenedAt));
    }

    [Fact]
    public void A_caution_is_remembered_by_person_place_and_day()
    {
        var state = VisitState.Fold([new CautionGiven("ladder", "room") { At = At, By = "ada" }]);

        Assert.Contains(new GivenCaution("ladder", "ada", "room", new DateOnly(2026, 7, 14)), state.Cautions);
    }

    private static FactTaken Taken(string fact, double value) => new(fact, value, "degF", null, "room", null) { At = At, By = "ada" };

    private static HashSet<FactValue> Facts(VisitState state) => [.. state.Facts.Values];

    private static void AssertSame(VisitState expected, VisitState actual)
    {
        Assert.Equal(Facts(expected), Facts(actual));
        Assert.Equal(
            (expected.Version, expected.IsPaused, expected.Outcome, expected.Clarification, expected.LastMessage),
            (actual.Version, actual.IsPaused, actual.Outcome, actual.Clarification, actual.LastMessage));
        Assert.Equal(expected.Skipped.ToHashSet(), actual.Skipped.ToHashSet());
        Assert.Equal(expected.Confirmed.ToHashSet(), actual.Confirmed.ToHashSet());
        Assert.Equal(expected.Questioned.ToHashSet(), actual.Questioned.ToHashSet());
        Assert.Equal(expected.Runs.All.Select(r => r with { Marks = [] }), actual.Runs.All.Select(r => r with { Marks = [] }));
        Assert.Equal(expected.Run?.StartedBy, actual.Run?.StartedBy);
        Assert.Equal(expected.Undoable, actual.Undoable);
        Assert.Equal(expected.History.SelectMany(h => h.Value).ToHashSet(), actual.History.SelectMany(h => h.Value).ToHashSet());
    }
}
