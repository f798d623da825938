using Assistant.Dialogue.Questions;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;
using Moq;

namespace Assistant.Dialogue.Tests.Turns;

public sealed class TurnEngineTests
{
    private const string Room =
        "refrigerant=R404A; application=cooler; box_temperature=50 degF; box_temperature_check=51 degF; setpoint=38 degF; differential=4 degF; " +
        "calling_for_cooling=yes; evaporator_fans=all; door_condition=good; product_temperature=45 degF; coil_ice=none; solenoid_energised=yes; " +
        "liquid_line_feel=warm; metering_device=txv";

    [Fact]
    public void A_visit_opens_with_its_site_and_the_first_step_at_the_room()
    {
        var talk = new Conversation();

        Assert.Equal(("hazards", "room"), (talk.Stop, talk.Reply.Walk!.Place));
        Assert.Contains("Upper Dairy", talk.Reply.Say.Full, StringComparison.Ordinal);
        Assert.Contains(talk.Reply.Cautions, c => c.Code == "trapped-inside");
    }

    [Fact]
    public void What_the_record_knows_is_not_asked()
    {
        var talk = new Conversation(known: [("refrigerant", "R449A"), ("application", "cooler")]);

        talk.Say("ok");

        Assert.Equal("box_temperature", talk.Reply.AskedFact);
    }

    [Fact]
    public void A_reading_is_repeated_and_the_next_one_asked()
    {
        var talk = new Conversation(known: [("refrigerant", "R449A"), ("application", "cooler")]);

        var reply = talk.SayAll("ok", "41 degF");

        Assert.StartsWith("Room temperature 41 °F.", reply.Say.Full, StringComparison.Ordinal);
        Assert.Equal("box_temperature_check", reply.AskedFact);
        Assert.Equal(["degF", "degC"], reply.Units.AsEnumerable());
    }

    [Fact]
    public void Readings_volunteered_early_fill_their_stops()
    {
        var talk = new Conversation();

        talk.SayAll("ok", Room);

        Assert.Equal("at-the-unit", talk.Stop);
        Assert.Contains(talk.Reply.Cautions, c => c.Code == "ladder");
    }

    [Fact]
    public void A_reading_taken_at_the_unit_says_that_the_technician_is_there()
    {
        var talk = new Conversation();

        talk.SayAll("ok", Room, "ambient_temperature=88 degF; compressor=running");

        Assert.Equal(("condenser-fans", "unit"), (talk.Stop, talk.Reply.Walk!.Place));
    }

    [Fact]
    public void A_blocked_coil_stops_the_refrigerant_side_until_it_is_clear()
    {
        var talk = new Conversation();

        var iced = talk.SayAll("ok", Room.Replace("coil_ice=none", "coil_ice=blocked", StringComparison.Ordinal));
        Assert.Equal("clear-the-ice", talk.Stop);
        Assert.Contains(iced.Cautions, c => c.Code == "ice-removal");

        Assert.Equal("clear-the-ice", talk.Say("skip").Walk!.Stop);
        Assert.Equal("why-it-iced", talk.Say("coil_ice=none").Walk!.Stop);
        Assert.Equal("at-the-unit", talk.Say("ok").Walk!.Stop);
    }

    [Fact]
    public void Thermometers_that_disagree_are_settled_and_the_good_one_counts()
    {
        var talk = new Conversation(known: [("refrigerant", "R449A"), ("application", "cooler")]);

        talk.SayAll("ok", "41 degF", "46 degF");
        Assert.Equal("which-thermometer", talk.Stop);

        var reply = talk.Say("the display");
        Assert.Equal("setpoint", talk.Stop);
        Assert.Equal(new Reading(FactCatalogue.BoxTemperature, 46, UnitOfMeasure.Fahrenheit), talk.State.Facts.Find(FactCatalogue.BoxTemperature));
        Assert.Contains("46 °F", reply.Say.Full, StringComparison.Ordinal);
    }

    [Fact]
    public void Not_calling_above_setpoint_and_differential_asks_for_defrost()
    {
        var talk = new Conversation();

        talk.SayAll("ok", Room.Replace("calling_for_cooling=yes", "calling_for_cooling=no", StringComparison.Ordinal));

        Assert.Equal("defrost", talk.Stop);
    }

    [Fact]
    public void A_compressor_at_rest_leads_to_supply_contactor_safeties_overload()
    {
        var talk = new Conversation();

        talk.SayAll("ok", Room, "ambient_temperature=88 degF; compressor=off");
        var stops = new List<string?> { talk.Stop };
        foreach (var said in new[] { "230 V", "ok", "ok" })
        {
            talk.Say(said);
            stops.Add(talk.Stop);
        }

        Assert.Equal(["supply", "contactor", "safeties", "overload"], stops);
    }

    [Fact]
    public void An_established_fault_ends_the_asking_with_what_to_do_and_the_caution_for_the_hands()
    {
        var talk = new Conversation(assess: facts => facts.Is(FactCatalogue.CondenserCoil, "dirty")
            ? Conversation.Judging((FaultCode.CondenserAirflow, Standing.Established))
            : Conversation.Nothing);

        var reply = talk.SayAll("ok", Room, "ambient_temperature=88 degF; compressor=running; condenser_fans=all", "dirty");

        Assert.Contains("VERDICT, established: the condenser can not get rid of its heat.", reply.Say.Full, StringComparison.Ordinal);
        Assert.Equal("act", talk.Stop);
        Assert.Equal(["lock-out", "moving-fan", "hot-surface"], reply.Cautions.Select(c => c.Code));
        Assert.Equal(["done", "later"], reply.Choices.AsEnumerable());
        Assert.Single(talk.State.Reminders);
    }

    [Fact]
    public void After_a_repair_the_readings_are_taken_afresh()
    {
        var talk = new Conversation(assess: facts => facts.Is(FactCatalogue.CondenserCoil, "dirty")
            ? Conversation.Judging((FaultCode.CondenserAirflow, Standing.Established))
            : Conversation.Nothing);

        talk.SayAll("ok", Room, "ambient_temperature=88 degF; compressor=running; condenser_fans=all", "dirty", "done");

        Assert.Equal("condenser-fans", talk.Stop);
        Assert.False(talk.State.Facts.Has(FactCatalogue.CondenserCoil));
        Assert.True(talk.State.Facts.Has(FactCatalogue.AmbientTemperature));
    }

    [Fact]
    public void A_question_in_the_middle_is_answered_and_the_walk_stays_where_it_was()
    {
        var answer = new Mock<AnswerQuestion>();
        answer.Setup(a => a(It.Is<Understood>(u => u.Question == "saturation"), It.IsAny<VisitState>()))
            .Returns(new Answer(new Phrase("It is 12 °F.", "12 °F"), [], null));
        var talk = new Conversation(answer: answer.Object, known: [("refrigerant", "R449A"), ("application", "cooler")]);

        talk.Say("ok");
        var reply = talk.Say("?saturation");

        Assert.Equal(("It is 12 °F.", "box_temperature"), (reply.Say.Full, reply.AskedFact));
    }

    [Fact]
    public void Undo_takes_back_the_last_value_and_the_one_before_counts_again()
    {
        var talk = new Conversation(known: [("refrigerant", "R449A"), ("application", "cooler")]);

        talk.SayAll("ok", "41 degF", "box_temperature=44 degF");
        var reply = talk.Say("undo");

        Assert.Equal("Taken back: room temperature 44 °F. It is 41 °F again.", reply.Say.Full);
        talk.Say("undo");
        Assert.Equal("box_temperature", talk.Reply.AskedFact);
        talk.Say("undo");
        Assert.Equal("hazards", talk.Stop);
        Assert.Equal("There is nothing to take back.", talk.Say("undo").Say.Full);
    }

    [Fact]
    public void A_value_the_rules_reject_is_questioned_and_kept_out_until_confirmed()
    {
        var talk = new Conversation(assess: facts => facts.Temperature(FactCatalogue.BoxTemperature) is { Degrees: > 60 }
            ? Conversation.Nothing with { Rejected = [new(facts.Find(FactCatalogue.BoxTemperature)!, new("question.dropped"))] }
            : Conversation.Nothing);
        talk.Say("refrigerant=R404A; application=cooler");

        var reply = talk.Say("box_temperature=400 degF");
        Assert.Equal(("box_temperature", false), (reply.AskedFact, talk.State.Facts.Has(FactCatalogue.BoxTemperature)));
        Assert.Equal(["yes", "no"], reply.Choices.AsEnumerable());

        talk.Say("yes");
        Assert.True(talk.State.Facts.Has(FactCatalogue.BoxTemperature));
    }

    [Fact]
    public void A_unit_as_the_whole_answer_completes_the_number_heard_before()
    {
        var talk = new Conversation(
            understand: (text, context) => text == "117 psig"
                ? FakeUnderstanding.Understand("suction_pressure=117 psig", context)
                : FakeUnderstanding.Understand(text == "117" ? "!Unit 117" : text, context),
            known: [("refrigerant", "R449A"), ("application", "cooler")]);
        talk.Say("ok");

        var reply = talk.Say("117");
        Assert.Equal(("Room temperature 117: in which unit?", "box_temperature"), (reply.Ask!.Full, reply.AskedFact));

        talk.Say("psig");
        Assert.Equal(new Reading(FactCatalogue.SuctionPressure, 117, UnitOfMeasure.Psig), talk.State.Facts.Find(FactCatalogue.SuctionPressure));
    }

    [Fact]
    public void A_pause_keeps_everything_and_the_next_reading_ends_it()
    {
        var talk = new Conversation(known: [("refrigerant", "R449A"), ("application", "cooler")]);

        talk.SayAll("ok", "pause");
        Assert.Null(talk.Reply.Ask);

        talk.Say("41 degF");
        Assert.False(talk.State.IsPaused);
        Assert.Equal("box_temperature_check", talk.Reply.AskedFact);
    }

    [Theory]
    [InlineData("I'm hurt")]
    [InlineData("got refrigerant in my eyes")]
    [InlineData("there is a fire up here")]
    [InlineData("gas alarm!")]
    public void An_emergency_interrupts_everything(string text)
    {
        var talk = new Conversation();

        var reply = talk.Say(text);

        Assert.StartsWith("STOP.", reply.Say.Full, StringComparison.Ordinal);
        Assert.Equal((null, "emergency"), (reply.Ask, Assert.Single(reply.Cautions).Code));
    }

    [Fact]
    public void Everything_skipped_ends_without_a_verdict_and_says_what_to_read()
    {
        var talk = new Conversation(assess: _ => Conversation.Nothing with { Next = FactCatalogue.SuctionPressure });
        talk.Say("ok");
        for (var i = 0; i < 40 && talk.Stop != "act"; i++)
        {
            talk.Say(talk.Reply.AskedFact is null ? "ok" : "skip");
        }

        Assert.Contains("suction pressure", talk.Reply.Ask!.Full, StringComparison.Ordinal);
    }

    [Fact]
    public void Done_in_the_middle_closes_with_what_there_is_and_undo_opens_it_again()
    {
        var talk = new Conversation();

        talk.SayAll("ok", "done");
        Assert.Null(talk.State.Outcome);
        talk.Say("yes");
        Assert.Equal("no fault established", talk.State.Outcome);
        Assert.Contains("closed", talk.Say("41 degF").Say.Full, StringComparison.Ordinal);

        talk.Say("undo");
        Assert.Null(talk.State.Outcome);
    }

    [Fact]
    public void The_log_folds_to_the_state_the_turns_gave()
    {
        var talk = new Conversation();

        talk.SayAll("ok", Room, "undo", Room, "skip", "why", "pause", "resume", "status");

        var folded = VisitState.Fold(talk.Log);
        Assert.Equal((talk.State.Version, talk.State.Stop), (folded.Version, folded.Stop));
        Assert.Equal(talk.State.Facts.Values.ToHashSet(), folded.Facts.Values.ToHashSet());
    }
}
