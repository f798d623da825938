namespace Assistant.Channels.Tests.Xmpp;

/// <summary>The line to the server: handshake, rooms, what is heard and what is posted, and what becomes of all that when it breaks.</summary>
public class XmppLineTests
{
    private const string Room = XmppScene.Room;

    [Fact]
    public async Task The_handshake_is_the_digest_of_the_streams_id_and_the_secret()
    {
        await using var scene = await XmppScene.OpenAsync();

        // printf '3BF96D32invented-coldwalk-secret' | sha1sum
        Assert.Equal("d7638cadef574d4f93e79bed4231aa36bf8421cf", await scene.Server.TakeAsync());
    }

    [Fact]
    public async Task A_wrong_secret_is_told_in_one_clear_line_and_tried_again_with_growing_waits()
    {
        await using var scene = await XmppScene.OpenAsync();
        for (var tries = 0; tries < 4; tries++)
        {
            await scene.Server.TakeAsync();

            // One that takes its time to refuse, longer than the longest wait, has not let us in either.
            await Task.Delay(tries == 1 ? 400 : 0);
            scene.Server.Write("<stream:error><not-authorized xmlns='urn:ietf:params:xml:ns:xmpp-streams'/></stream:error></stream:stream>");
        }

        await scene.SeatAsync();
        await XmppScene.UntilAsync(() => scene.Lines.Count >= 4, "too few lines");

        Assert.Equal(
            new[] { "0.1", "0.1", "0.2", "0.2" }.Select(wait =>
                $"Warning: Chat: no line to the server as coldwalk.chat.example: the secret is not the one the server has for this component (not-authorized). Tried again in {wait} s."),
            scene.Lines.Take(4));
    }

    [Fact]
    public async Task What_is_said_in_the_room_is_heard_once_and_in_its_order()
    {
        await using var scene = await XmppScene.OpenAsync();
        await scene.SeatAsync();

        scene.Say("a1", "Coldwalk: suction 14");
        scene.Say("a2", "head 253");
        scene.Say("a2", "head 253");
        scene.Say("a3", "sub 9");
        await XmppScene.UntilAsync(() => scene.InRoom.Any(w => w.Text == "sub 9"), "not heard");

        Assert.Equal(["suction 14", "head 253", "sub 9"], scene.InRoom.Select(w => w.Text));
        Assert.All(scene.InRoom, w => Assert.Equal("kim@chat.example", w.Account?.ToString()));
    }

    [Fact]
    public async Task After_a_lost_line_what_was_missed_is_asked_for_and_comes_once()
    {
        await using var scene = await XmppScene.OpenAsync();
        Assert.Equal("0", (string?)(await scene.SeatAsync()).Descendants().First(e => e.Name.LocalName == "history").Attribute("maxstanzas"));
        scene.Say("a1", "suction 14");
        await XmppScene.UntilAsync(() => scene.InRoom.Count == 1, "not heard");

        var stamp = DateTimeOffset.UtcNow.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture);
        var delay = $"<delay from='{Room}' stamp='{stamp}'/>";
        var entering = await scene.SeatAsync(XmppScene.Message("a1", "suction 14", delay));
        scene.Server.Send(XmppScene.Message("a2", "head 253"));
        await XmppScene.UntilAsync(() => scene.InRoom.Count >= 2, "not heard");

        Assert.Equal(["suction 14", "head 253"], scene.InRoom.Select(w => w.Text));
        Assert.NotNull(entering.Descendants().First(e => e.Name.LocalName == "history").Attribute("since"));
    }

    [Fact]
    public async Task A_post_is_there_once_the_room_has_sent_it_back()
    {
        await using var scene = await XmppScene.OpenAsync();
        await scene.SeatAsync();
        await scene.ReplyAsync(Room, "m1", "Taken: suction 14 psig.");

        var post = await scene.Server.NextAsync("message");
        Assert.Equal(("Taken: suction 14 psig.", Room, "groupchat"), (post.Value, (string?)post.Attribute("to"), (string?)post.Attribute("type")));
        Assert.NotEmpty(await scene.Outbox.DueAsync("xmpp", DateTimeOffset.UtcNow));
        Reflect(scene, (string)post.Attribute("id")!);

        await DeliveredAsync(scene);
    }

    [Fact]
    public async Task A_post_whose_end_is_not_known_is_found_in_the_history_and_not_posted_again()
    {
        await using var scene = await XmppScene.OpenAsync(doubt: TimeSpan.FromSeconds(1));
        await scene.SeatAsync();
        await scene.ReplyAsync(Room, "m1", "Taken: suction 14 psig.");
        var id = (string)(await scene.Server.NextAsync("message")).Attribute("id")!;

        // The line breaks before the room's word of it; the next one's history has it.
        await scene.SeatAsync($"<message type='groupchat' from='{Room}/Coldwalk' to='coldwalk@coldwalk.chat.example/room' id='{id}'><body>Taken: suction 14 psig.</body><occupant-id id='o-own'/></message>");

        await DeliveredAsync(scene);
        await scene.ReplyAsync(Room, "m2", "Head next.");
        Assert.Equal("Head next.", (await scene.Server.NextAsync("message")).Value);
    }

    [Fact]
    public async Task A_post_that_did_not_get_there_is_posted_again_under_the_same_id()
    {
        await using var scene = await XmppScene.OpenAsync(doubt: TimeSpan.FromSeconds(1));
        await scene.SeatAsync();
        await scene.ReplyAsync(Room, "m1", "Taken: suction 14 psig.");
        var id = (string)(await scene.Server.NextAsync("message")).Attribute("id")!;

        await scene.SeatAsync();
        var again = await scene.Server.NextAsync("message");
        Reflect(scene, (string)again.Attribute("id")!);

        Assert.Equal(id, (string?)again.Attribute("id"));
        await DeliveredAsync(scene);
    }

    [Theory]
    [InlineData("<message><body>", "</presence>", "not-well-formed")]
    [InlineData("<!-- hidden -->", "", "restricted-xml")]
    public async Task What_may_not_stand_in_a_stream_is_told_and_the_line_begins_anew(string first, string then, string condition)
    {
        await using var scene = await XmppScene.OpenAsync();
        await scene.SeatAsync();

        scene.Server.Write(first + then);

        Assert.Equal(condition, (await scene.Server.NextAsync("error")).Elements().First().Name.LocalName);
        await scene.SeatAsync();
        scene.Say("a1", "suction 14");
        await XmppScene.UntilAsync(() => scene.InRoom.Count == 1, "not heard");
    }

    [Fact]
    public async Task A_stanza_too_large_or_too_deep_is_left_out_and_the_line_holds()
    {
        await using var scene = await XmppScene.OpenAsync();
        await scene.SeatAsync();

        scene.Say("a1", new string('9', 200_000));
        scene.Say("a2", "deep", string.Concat(Enumerable.Repeat("<a>", 500)) + string.Concat(Enumerable.Repeat("</a>", 500)));
        scene.Say("a3", "suction 14");
        await XmppScene.UntilAsync(() => !scene.InRoom.IsEmpty, "not heard");

        Assert.Equal(["suction 14"], scene.InRoom.Select(w => w.Text));
    }

    [Fact]
    public async Task Queries_are_answered_and_unknown_ones_refused()
    {
        await using var scene = await XmppScene.OpenAsync();
        await scene.SeatAsync();

        scene.Server.Send("<iq type='get' id='q1' from='chat.example' to='coldwalk.chat.example'><ping xmlns='urn:xmpp:ping'/></iq>");
        Assert.Equal(("q1", "result"), await AnswerAsync(scene));
        scene.Server.Send("<iq type='get' id='q2' from='kim@chat.example/phone' to='coldwalk@coldwalk.chat.example'><query xmlns='http://jabber.org/protocol/disco#info'/></iq>");
        Assert.Equal(("q2", "result"), await AnswerAsync(scene));
        scene.Server.Send("<iq type='set' id='q3' from='kim@chat.example/phone' to='coldwalk@coldwalk.chat.example'><query xmlns='jabber:iq:roster'/></iq>");
        Assert.Equal(("q3", "error"), await AnswerAsync(scene));
    }

    [Fact]
    public async Task With_the_nick_taken_another_is_tried()
    {
        await using var scene = await XmppScene.OpenAsync();
        await scene.Server.LetInAsync();
        Assert.Equal($"{Room}/Coldwalk", (string?)(await scene.Server.NextAsync("presence")).Attribute("to"));

        scene.Server.Send($"<presence type='error' from='{Room}/Coldwalk'><error type='cancel'><conflict xmlns='urn:ietf:params:xml:ns:xmpp-stanzas'/></error></presence>");

        Assert.Equal($"{Room}/Coldwalk-2", (string?)(await scene.Server.NextAsync("presence")).Attribute("to"));
    }

    [Fact]
    public async Task A_room_that_has_forgotten_us_is_entered_again_and_the_post_goes_out_there()
    {
        await using var scene = await XmppScene.OpenAsync();
        await scene.SeatAsync();
        await scene.ReplyAsync(Room, "m1", "Taken.");
        var id = (string)(await scene.Server.NextAsync("message")).Attribute("id")!;

        scene.Server.Send($"<message type='error' from='{Room}' to='coldwalk@coldwalk.chat.example/room' id='{id}'><error type='cancel'><not-acceptable xmlns='urn:ietf:params:xml:ns:xmpp-stanzas'/></error></message>");
        await scene.Server.NextAsync("presence");
        scene.Server.Send($"<presence from='{Room}/Coldwalk'><x><status code='100'/><status code='110'/></x><occupant-id id='o-own'/></presence>");
        scene.Server.Send($"<message type='groupchat' from='{Room}'><subject/></message>");

        Reflect(scene, (string)(await scene.Server.NextAsync("message")).Attribute("id")!);
        await DeliveredAsync(scene);
    }

    [Fact]
    public async Task Sent_out_of_the_room_it_says_so_and_comes_back_after_a_while()
    {
        await using var scene = await XmppScene.OpenAsync(beat: TimeSpan.FromMilliseconds(500));
        await scene.SeatAsync();

        scene.Server.Send($"<presence type='unavailable' from='{Room}/Coldwalk'><x><item role='none'><reason>be quiet</reason></item><status code='110'/><status code='307'/></x></presence>");

        await scene.Server.NextAsync("presence");
        Assert.Contains(scene.Lines, l => l.Contains("it was sent out of the room (\"be quiet\"). Tried again in 0.5 s.", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_server_that_has_fallen_silent_is_left_and_tried_again()
    {
        await using var scene = await XmppScene.OpenAsync(beat: TimeSpan.FromMilliseconds(500));
        await scene.SeatAsync();
        scene.Server.IsSilent = true;

        Assert.Equal("connection-timeout", (await scene.Server.NextAsync("error")).Elements().First().Name.LocalName);
        await scene.SeatAsync();
    }

    [Fact]
    public async Task A_room_that_hides_who_is_who_is_told_of()
    {
        await using var scene = await XmppScene.OpenAsync();
        await scene.Server.LetInAsync();
        await scene.Server.NextAsync("presence");

        scene.Server.Send($"<presence from='{Room}/Coldwalk'><x><status code='110'/></x></presence>");

        await XmppScene.UntilAsync(() => scene.Lines.Any(l => l.Contains("hides who is who", StringComparison.Ordinal) && l.Contains("coldwalk@coldwalk.chat.example", StringComparison.Ordinal)), "not told");
    }

    [Fact]
    public async Task What_is_written_directly_is_heard_and_acknowledged_and_the_answer_is_there_once_the_server_has_it()
    {
        await using var scene = await XmppScene.OpenAsync();
        await scene.SeatAsync();
        scene.Server.Send("<message type='chat' from='kim@chat.example/phone' to='coldwalk@coldwalk.chat.example' id='d1-of-phone'><body>482913</body><request xmlns='urn:xmpp:receipts'/></message>");

        var receipt = await scene.Server.NextAsync("message");
        Assert.Equal(("received", "d1-of-phone"), (receipt.Elements().First().Name.LocalName, (string?)receipt.Elements().First().Attribute("id")));
        var words = Assert.Single(scene.Direct);
        Assert.Equal(("kim@chat.example", "482913"), (words.Account.ToString(), words.Text));

        await scene.ReplyAsync("kim@chat.example", "m1", "Welcome, Kim.");
        Assert.Equal("Welcome, Kim.", (await scene.Server.NextAsync("message")).Value);
        var own = await scene.Server.NextAsync("iq");
        Assert.NotEmpty(await scene.Outbox.DueAsync("xmpp", DateTimeOffset.UtcNow));
        scene.Server.Send($"<iq type='get' id='{own.Attribute("id")!.Value}' from='coldwalk@coldwalk.chat.example' to='coldwalk@coldwalk.chat.example'><ping xmlns='urn:xmpp:ping'/></iq>");
        await DeliveredAsync(scene);
    }

    [Fact]
    public async Task Stopped_it_tells_the_room_that_it_goes()
    {
        var scene = await XmppScene.OpenAsync();
        await scene.SeatAsync();
        scene.Say("a1", "suction 14");
        await XmppScene.UntilAsync(() => scene.InRoom.Count == 1, "not heard");

        var going = scene.Server.NextAsync("presence");
        await scene.DisposeAsync();

        Assert.Equal("unavailable", (string?)(await going).Attribute("type"));
    }

    private static async Task<(string?, string?)> AnswerAsync(XmppScene scene)
    {
        // On a slow machine it may ask for a sign of life in between.
        var answer = await scene.Server.NextAsync("iq");
        while ((string?)answer.Attribute("type") == "get")
        {
            answer = await scene.Server.NextAsync("iq");
        }

        return ((string?)answer.Attribute("id"), (string?)answer.Attribute("type"));
    }

    private static void Reflect(XmppScene scene, string id) =>
        scene.Server.Send($"<message type='groupchat' from='{Room}/Coldwalk' to='coldwalk@coldwalk.chat.example/room' id='{id}'><body>as it was</body><occupant-id id='o-own'/></message>");

    private static async Task DeliveredAsync(XmppScene scene)
    {
        for (var until = DateTimeOffset.UtcNow.AddSeconds(20); !(await scene.Outbox.DueAsync("xmpp", DateTimeOffset.UtcNow.AddHours(1))).IsEmpty; await Task.Delay(20))
        {
            Assert.True(DateTimeOffset.UtcNow < until, "still not delivered");
        }
    }
}
