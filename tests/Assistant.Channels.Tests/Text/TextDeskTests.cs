using Assistant.Channels.Text;
using Assistant.Trade.Facts;
using static Assistant.Trade.Facts.FactCatalogue;

namespace Assistant.Channels.Tests.Text;

public class TextDeskTests : IAsyncLifetime
{
    private const string Phone = "+15550101";
    private TextScene scene = null!;

    public async Task InitializeAsync() => scene = await TextScene.OpenAsync();

    public async Task DisposeAsync() => await scene.DisposeAsync();

    [Fact]
    public async Task A_message_id_is_applied_once_and_answered_once()
    {
        await scene.TextAsync(Phone, "all safe", "m1");
        await scene.TextAsync(Phone, "r22 cooler, box 47", "m2");
        await scene.Desk.ReceiveAsync("m2", Phone, "r22 cooler, box 47", scene.Clock.Now);
        await scene.Desk.HandleAllAsync();

        Assert.Empty(await scene.Outbox.DueAsync(TextSettings.Channel, scene.Clock.Now.AddDays(1)));
        Assert.Single((await scene.StateAsync(Phone)).History[BoxTemperature]);
    }

    [Fact]
    public async Task The_same_text_of_the_same_second_under_another_id_is_the_same_message()
    {
        var sent = scene.Clock.Now;

        Assert.True(await scene.Desk.ReceiveAsync("a", Phone, "box 47", sent));
        Assert.False(await scene.Desk.ReceiveAsync("b", Phone, "box 47", sent));
        Assert.True(await scene.Desk.ReceiveAsync("c", Phone, "box 47", sent.AddSeconds(-1)));
    }

    [Fact]
    public async Task A_reading_sent_before_the_question_it_answers_lands_at_its_time()
    {
        await scene.TextAsync(Phone, "all safe");
        await scene.TextAsync(Phone, "r22 cooler, box 47");
        var sent = scene.Clock.Now.AddSeconds(-30);
        scene.Clock.Add(TimeSpan.FromMinutes(20));
        await scene.Desk.ReceiveAsync("late", Phone, "set 38 deg", sent);
        var reply = await scene.AnswerAsync("late");

        var taken = Assert.Single((await scene.StateAsync(Phone)).History[Setpoint]);
        Assert.Equal(sent, taken.At);
        Assert.Contains("set 38F", reply, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bare_number_answers_the_question_its_sender_had_in_view()
    {
        await scene.TextAsync(Phone, "all safe");
        Assert.Contains("Room display?", await scene.TextAsync(Phone, "r22 cooler"), StringComparison.Ordinal);
        var view = scene.Clock.Now;
        await scene.TextAsync(Phone, "box 45");
        await scene.TextAsync(Phone, "44.5");
        await scene.Desk.ReceiveAsync("late", Phone, "47", view.AddSeconds(20));
        var reply = await scene.AnswerAsync("late");

        var state = await scene.StateAsync(Phone);
        Assert.Equal([47, 45], state.History[BoxTemperature].Select(e => ((Reading)e.Value!).Value));
        Assert.Equal(45, ((Reading)state.Facts.Find(BoxTemperature)!).Value);
        Assert.Equal(44.5, ((Reading)state.Facts.Find(BoxTemperatureCheck)!).Value);
        Assert.Contains("box 47F of 09:02 noted; 45F of 09:03 counts", reply, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_answers_to_one_question_are_shown()
    {
        await scene.TextAsync(Phone, "all safe");
        await scene.TextAsync(Phone, "r22 cooler");
        var now = scene.Clock.Now;
        scene.Clock.Add(TimeSpan.FromMinutes(1));
        await scene.Desk.ReceiveAsync("one", Phone, "47", now.AddSeconds(20));
        await scene.Desk.ReceiveAsync("two", Phone, "45", now.AddSeconds(25));
        var reply = await scene.AnswerAsync("two");

        Assert.Contains("box now 45F, was 47F", reply, StringComparison.Ordinal);
        Assert.Equal(2, (await scene.StateAsync(Phone)).History[BoxTemperature].Count);
    }

    [Fact]
    public async Task While_it_is_not_known_whether_the_question_arrived_its_answer_waits()
    {
        await scene.TextAsync(Phone, "all safe");
        await scene.Desk.ReceiveAsync("question", Phone, "r22 cooler", scene.Clock.Now.AddMinutes(1));
        await scene.Desk.HandleAllAsync();
        scene.Clock.Add(TimeSpan.FromMinutes(1));
        var reply = (await scene.Outbox.TakeNextAsync(TextSettings.Channel, scene.Clock.Now, DateTimeOffset.MinValue))!;
        scene.Clock.Add(TimeSpan.FromSeconds(20));
        await scene.Desk.ReceiveAsync("answer", Phone, "47", scene.Clock.Now);

        Assert.Equal(0, await scene.Desk.HandleAllAsync());
        await scene.Outbox.HandedOverAsync(reply.Id, scene.Clock.Now);
        Assert.Equal(1, await scene.Desk.HandleAllAsync());
        Assert.Single((await scene.StateAsync(Phone)).History[BoxTemperature]);
    }

    [Fact]
    public async Task A_word_to_an_earlier_step_is_not_turned_on_another_question()
    {
        await scene.TextAsync(Phone, "all safe");
        await scene.TextAsync(Phone, "r22 cooler");
        var view = scene.Clock.Now;
        await scene.TextAsync(Phone, "box 47");
        await scene.Desk.ReceiveAsync("late", Phone, "done", view.AddSeconds(20));
        var reply = await scene.AnswerAsync("late");

        Assert.Contains("Sent before this question", reply, StringComparison.Ordinal);
        Assert.Null((await scene.StateAsync(Phone)).Outcome);
    }

    [Fact]
    public async Task A_number_nobody_knows_gets_one_line_a_day()
    {
        var first = await scene.TextAsync("+1555000099", "box 47");
        var second = await scene.TextAsync("+1555000099", "hello?");
        scene.Clock.Add(TimeSpan.FromDays(1));
        var third = await scene.TextAsync("+1555000099", "anybody?");

        Assert.Contains("not enrolled", first, StringComparison.Ordinal);
        Assert.Equal(("", first), (second, third));
        Assert.Equal(1, Gsm7.Segments(first));
    }

    [Fact]
    public async Task A_code_enrols_a_number()
    {
        Assert.Contains("Welcome, Sam", await scene.TextAsync("+1555000099", InventedPeople.Code), StringComparison.Ordinal);
        Assert.Contains("Safe to work", await scene.TextAsync("+1555000099", "cold room is warm"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_code_from_an_enrolled_phone_is_taken_as_a_code_and_is_no_word_of_the_visit()
    {
        await scene.TextAsync(Phone, "all safe");

        Assert.Contains("Welcome, Sam", await scene.TextAsync(Phone, InventedPeople.Code), StringComparison.Ordinal);
        Assert.Equal(1, (await scene.Log.ReadAsync((await scene.Log.VisitOfAsync(TextSettings.Channel, Phone))!)).Count(e => e is Dialogue.Visits.MessageHeard));
    }

    [Fact]
    public async Task A_message_that_can_not_be_taken_holds_up_no_other()
    {
        scene.People.Confused.Add("+15550133");
        await scene.Desk.ReceiveAsync("bad", "+15550133", "box 47", scene.Clock.Now);
        var answered = await scene.TextAsync(Phone, "all safe");

        Assert.NotEqual("", answered);
        Assert.True(await scene.Outbox.HasAsync(TextSettings.Channel, "bad"));
    }

    [Fact]
    public async Task A_lost_phone_is_a_strangers()
    {
        await scene.TextAsync(Phone, "all safe");
        scene.People.Revoked.Add(Phone);

        Assert.Contains("not enrolled", await scene.TextAsync(Phone, "box 47"), StringComparison.Ordinal);
        Assert.False((await scene.StateAsync(Phone)).Facts.Has(BoxTemperature));
    }

    [Fact]
    public async Task Stop_ends_it_and_start_begins_it_again()
    {
        await scene.TextAsync(Phone, "all safe");

        Assert.Contains("nothing more", await scene.TextAsync(Phone, "STOP"), StringComparison.Ordinal);
        Assert.Equal("", await scene.TextAsync(Phone, "box 47"));
        Assert.Equal("", await scene.TextAsync(Phone, "Stop."));
        Assert.Contains("is back", await scene.TextAsync(Phone, "start"), StringComparison.Ordinal);
        Assert.NotEqual("", await scene.TextAsync(Phone, "box 47"));
    }

    [Fact]
    public async Task A_question_is_answered_without_a_visit()
    {
        var reply = await scene.TextAsync(Phone, "saturation temp of r22 at 69 psi?");

        // 68.6 psig is 40 degF for R-22 (pressure-temperature cards, common practice).
        Assert.Contains("40F", reply, StringComparison.Ordinal);
        Assert.Null(await scene.Log.VisitOfAsync(TextSettings.Channel, Phone));
    }

    [Fact]
    public async Task A_list_in_one_text_is_taken_and_what_was_not_understood_is_named()
    {
        await scene.TextAsync(Phone, "all safe");
        var reply = await scene.TextAsync(Phone, "suc 22 hd 201 ll 95 sl 45 amb 5 sg flashing blorp");

        var facts = (await scene.StateAsync(Phone)).Facts;
        Assert.All([SuctionPressure, DischargePressure, LiquidLineTemperature, SuctionLineTemperatureAtCompressor, AmbientTemperature, SightGlass], fact => Assert.True(facts.Has(fact)));
        Assert.Contains("Not understood: blorp", reply, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Killed_between_the_answer_and_the_note_of_it_nothing_is_answered_twice()
    {
        await scene.TextAsync(Phone, "all safe", "m1");
        await scene.Desk.ReceiveAsync("m2", Phone, "r22 cooler, box 47", scene.Clock.Now);
        await scene.Conversations.HandleLateAsync(new("m2", TextSettings.Channel, Phone, "Robin 01", scene.Clock.Now, "r22 cooler, box 47"), null);
        scene.Restart();
        await scene.Desk.HandleAllAsync();

        Assert.Single(await scene.Outbox.DueAsync(TextSettings.Channel, scene.Clock.Now.AddDays(1)));
        Assert.Single((await scene.StateAsync(Phone)).History[BoxTemperature]);
    }

    [Fact]
    public async Task The_reports_address_is_texted_with_the_day_it_ends_and_where_there_is_none_that_is_said()
    {
        Assert.StartsWith("This number is on no visit.", await scene.TextAsync(Phone, "report link"), StringComparison.Ordinal);
        await scene.TextAsync(Phone, "all safe");
        Assert.Equal("No link: the report is on the page and at the office.", await scene.TextAsync(Phone, "send me the report"));

        var visit = await scene.Log.VisitOfAsync(TextSettings.Channel, Phone);
        scene.Reports = (id, _) => Task.FromResult(("https://cold.example/r/" + id, new DateTimeOffset(2026, 7, 28, 9, 0, 0, TimeSpan.Zero)));
        scene.Restart();
        Assert.Equal($"Report, open to whoever has this address until 2026-07-28: https://cold.example/r/{visit}", await scene.TextAsync(Phone, "Report link."));
    }
}
