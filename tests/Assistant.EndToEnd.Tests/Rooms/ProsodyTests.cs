using Assistant.Channels.Tests.Text;
using Assistant.Dialogue.Visits;
using Assistant.EndToEnd.Tests.Fixtures;
using Xunit.Abstractions;
using static Assistant.EndToEnd.Tests.Rooms.RoomScene;

namespace Assistant.EndToEnd.Tests.Rooms;

/// <summary>People in a room of a real chat server (Debian package prosody) with the program as its component, on loopback.</summary>
public sealed class ProsodyTests(ITestOutputHelper output)
{
    [Fact]
    public async Task Two_people_in_a_room_talk_through_one_visit()
    {
        await using var scene = await RoomScene.OpenAsync("kim", "lee");
        using var kim = await scene.SitAsync("kim");
        using var lee = await scene.SitAsync("lee");
        await scene.Server.InitializeAsync();
        await kim.UntilInAsync(Coldwalk);

        await SayAsync(kim, "Coldwalk: cold room is warm", lee);
        await SayAsync(lee, "ok", kim);
        await SayAsync(kim, "R404A cooler", lee);
        await SayAsync(lee, "box 50", kim);
        await SayAsync(kim, "probe 51", lee);

        var (_, state) = await scene.StoredAsync();
        Assert.Equal("Lee", Taken(state, "box_temperature").By);
        Assert.Equal("Kim", Taken(state, "box_temperature_check").By);
        Assert.Equal(5, Replies(kim));
        Assert.Equal(5, Replies(lee));
    }

    [Fact]
    public async Task Two_who_answer_one_question_within_moments_are_both_kept()
    {
        await using var scene = await RoomScene.OpenAsync("kim", "lee");
        using var kim = await scene.SitAsync("kim");
        using var lee = await scene.SitAsync("lee");
        await scene.Server.InitializeAsync();
        await kim.UntilInAsync(Coldwalk);
        foreach (var text in new[] { "Coldwalk: cold room is warm", "ok", "R404A", "cooler" })
        {
            await SayAsync(kim, text);
        }

        kim.Say("50");
        lee.Say("54");
        await scene.AnsweredAsync(6, () => Shown(kim));

        // Both in one post.
        Assert.Equal(5, Replies(kim));
        var (_, state) = await scene.StoredAsync();
        var taken = state.History.Single(h => h.Key.Name == "box_temperature").Value;
        Assert.Equal(["Kim", "Lee"], taken.Select(t => t.By).Order());
        Assert.DoesNotContain(state.Facts.Values, v => v.Fact.Name == "box_temperature_check");
        output.WriteLine(Shown(kim));
    }

    [Fact]
    public async Task With_server_and_program_killed_in_between_the_call_comes_to_the_same_and_no_reply_is_lost_or_doubled()
    {
        await using var scene = await RoomScene.OpenAsync("kim", "lee", "sam");
        await using var calm = await TextScene.OpenAsync();
        var expected = (await new TextSchedule(calm, "+15551000000", null).RunAsync()).Outcome;
        var (kim, lee) = (await scene.SitAsync("kim"), await scene.SitAsync("lee"));
        await scene.Server.InitializeAsync();
        await kim.UntilInAsync(Coldwalk);
        var (texts, speaker) = (0, kim);
        for (var burst = 0; burst < WarmBoxCall.Bursts.Length; burst++)
        {
            if (burst is 2 or 5)
            {
                // What is said while the program is away waits in the room.
                await scene.Server.KillAsync();
            }

            foreach (var text in WarmBoxCall.Bursts[burst])
            {
                speaker = speaker == kim ? lee : kim;
                // Said to nobody, "done" is no longer answered once the visit is closed.
                await ToldAsync(speaker, texts == 0 || text == "done" ? "Coldwalk: " + text : text);
                texts++;
            }

            if (burst is 2 or 5)
            {
                await scene.Server.StartAgainAsync();
            }

            if (burst is 1 or 5 or 7)
            {
                // In the middle of the answers, and once with the program still on its way in.
                scene.Prosody.Kill();
                kim.Dispose();
                lee.Dispose();
                await Task.Delay(500);
                await scene.Prosody.StartAsync();
                (kim, lee) = (await scene.SitAsync("kim", lines: 200), await scene.SitAsync("lee", lines: 200));
                speaker = kim;
            }

            await scene.AnsweredAsync(texts, () => Shown(kim));
        }

        // Nothing comes after what was waited for.
        await Task.Delay(2000);
        using var sam = await scene.SitAsync("sam", lines: 500);
        var (rows, state) = await scene.StoredAsync();
        Assert.Equal(expected, WarmBoxCall.Outcome(state));
        Assert.Equal(texts, rows.Count(r => !r.MessageId.StartsWith("news ", StringComparison.Ordinal)));
        Assert.All(rows, row => Assert.NotNull(row.DeliveredAt));
        var posts = rows.Count(r => r.PartOf is null);
        Assert.True(Replies(sam) == posts, Shown(sam));
        output.WriteLine($"{texts} messages of two people; the chat server killed three times, the program twice; answered in {posts} posts, each there once");
        kim.Dispose();
        lee.Dispose();
    }

    [Fact]
    public async Task A_wrong_secret_is_told_on_the_error_stream()
    {
        await using var scene = await RoomScene.OpenAsync();
        scene.Prosody.Environment["COLDWALK_XMPP_SECRET"] = "another-secret-altogether";

        await scene.Server.InitializeAsync();

        await UntilAsync(() => scene.Server.Errors.Contains("the secret is not the one the server has for this component", StringComparison.Ordinal), () => scene.Server.Errors);
        Assert.Contains("Tried again in", scene.Server.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("another-secret-altogether", scene.Server.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_whom_nobody_knows_is_told_how_to_be_known_and_once_known_speaks_under_the_persons_name()
    {
        await using var scene = await RoomScene.OpenAsync("kim");
        var code = await scene.EnrolAsync("Kim Nowak");
        using var kim = await scene.SitAsync("kim");
        await scene.Server.InitializeAsync();
        await kim.UntilInAsync(Coldwalk);

        var stranger = await SayAsync(kim, "Coldwalk: cold room is warm");
        Assert.Contains($"write it to coldwalk@coldwalk.{Prosody.Host} directly", stranger.Text, StringComparison.Ordinal);
        Assert.Contains("not enrolled", (await TellAsync(kim, "cold room is warm")).Text, StringComparison.Ordinal);
        Assert.Contains("Welcome, Kim Nowak", (await TellAsync(kim, code)).Text, StringComparison.Ordinal);
        await SayAsync(kim, "Coldwalk: cold room is warm");
        await SayAsync(kim, "ok");
        await SayAsync(kim, "box 50");

        // The account is taken from the person: what is said in the room counts no more. That it is not known was told once today.
        var revoked = await AppRun.OfAsync(["people", "revoke", "Kim Nowak", "--data", scene.Server.Data]);
        Assert.True(revoked.ExitCode == 0, revoked.Error);
        var (posts, refusals) = (kim.Screen.Count(l => l.From != "Kim"), Refusals(scene));
        kim.Say("probe 51");
        kim.Say("Coldwalk: status");
        kim.Tell($"coldwalk@coldwalk.{Prosody.Host}", "status");
        await UntilAsync(() => Refusals(scene) == refusals + 2, () => scene.Server.Errors);
        await Task.Delay(2000);
        Assert.Equal(posts, kim.Screen.Count(l => l.From != "Kim"));

        var (_, state) = await scene.StoredAsync();
        Assert.Equal("Kim Nowak", Taken(state, "box_temperature").By);
        Assert.DoesNotContain(state.History.Keys, f => f.Name == "box_temperature_check");
    }

    [Fact]
    public async Task What_is_too_large_or_too_deep_for_anybody_holds_nothing_up()
    {
        await using var scene = await RoomScene.OpenAsync("kim");
        using var kim = await scene.SitAsync("kim");
        await scene.Server.InitializeAsync();
        await kim.UntilInAsync(Coldwalk);
        var (large, deep) = (new string('9', 100_000), string.Concat(Enumerable.Repeat("<a xmlns='urn:invented'>", 200)) + string.Concat(Enumerable.Repeat("</a>", 200)));

        kim.Write($"<message to='{Prosody.Room}' type='groupchat' id='l1'><body>Coldwalk: {large}</body></message>");
        kim.Write($"<message to='{Prosody.Room}' type='groupchat' id='l2'><body>Coldwalk: deep</body>{deep}</message>");
        await SayAsync(kim, "Coldwalk: cold room is warm");

        Assert.Equal(1, Replies(kim));
        Assert.DoesNotContain("no line to the server", scene.Server.Errors, StringComparison.Ordinal);
    }

    private static int Refusals(RoomScene scene) => scene.Server.Errors.Split("who is not enrolled is refused").Length - 1;

    /// <summary>Says it, and waits until the room has it.</summary>
    private static async Task ToldAsync(ChatPerson person, string text)
    {
        var before = person.Screen.Count;
        person.Say(text);
        await person.ReadAsync(l => l.Text == text, before);
    }

    private static TakenFact Taken(VisitState state, string fact) => state.History.Single(h => h.Key.Name == fact).Value.Single();
}
