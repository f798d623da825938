using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Records.Chain;
using Assistant.Records.Inbox;
using Assistant.Records.Outbox;
using Assistant.Records.People;
using Assistant.Records.Storage;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.People;

public abstract class VisitPeopleTests(Store store)
{
    [Fact]
    public async Task Where_no_firm_is_set_up_anyone_may_join_and_nobody_signs_in()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var visit = await scene.OpenVisitAsync();
        var code = await scene.People.Visits.CodeOfAsync(visit, firmId: null);

        Assert.True(await scene.People.Visits.MayJoinAsync(visit, person: null));
        Assert.Equal(new Joined(visit, PersonRoles.OnSite), await scene.People.Visits.JoinByCodeAsync(code, person: null, "page", "tablet"));
        Assert.Equal(visit, await scene.Records.Log.VisitOfAsync("page", "tablet"));
        Assert.Single(await scene.Records.Log.ReadAsync(visit));
    }

    [Fact]
    public async Task Where_nobody_signs_in_who_joined_is_on_the_visit_before_they_say_anything()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var visit = await scene.OpenVisitAsync();
        var code = await scene.People.Visits.CodeOfAsync(visit, firmId: null);

        await scene.People.Visits.JoinByCodeAsync(code, person: null, "team", "thread", called: "Sam");
        await scene.People.Visits.JoinByCodeAsync(code, person: null, "team", "thread", called: "Lee");
        await scene.People.Visits.JoinByCodeAsync(code, person: null, "page", "tablet", called: "Sam");

        var events = await scene.Records.Log.ReadAsync(visit);
        Assert.Equal(["Sam", "Lee"], events.OfType<PersonJoined>().Select(j => j.By));
        Assert.Equal([("Lee", "on-site", false), ("Sam", "on-site", false)], VisitCrew.Of(VisitState.Fold(events)).Select(m => (m.Name, m.Role, m.HeardAt is not null)).OrderBy(m => m.Name, StringComparer.Ordinal));
        Assert.Empty(await scene.People.Visits.OnVisitAsync(visit));
    }

    [Fact]
    public async Task A_person_with_access_joins_from_another_channel_and_speaks_on_the_same_visit()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var robin = await scene.EnrolAsync("Robin");
        var kim = await scene.AddAsync("Kim", PersonRoles.Helping | PersonRoles.OnSite);
        var visit = await scene.OpenVisitAsync();
        await scene.People.Visits.JoinAsync(visit, robin, "chat", "c-1");
        var code = await scene.People.Visits.CodeOfAsync(visit, robin.FirmId);

        Assert.Equal(new Joined(visit, PersonRoles.Helping), await scene.People.Visits.JoinByCodeAsync($"{code[..2]} {code[2..]}", kim, "team", "room-1"));
        Assert.Equal(code, await scene.People.Visits.CodeOfAsync(visit, robin.FirmId));
        var reply = await scene.Conversations.HandleAsync(new("t-1", "team", "room-1", "Kim", scene.Clock.Now, "head 171"));

        Assert.Equal("head 171 after 3", reply.Say.Full);
        Assert.Equal([("Robin", PersonRoles.OnSite), ("Kim", PersonRoles.Helping)], (await scene.People.Visits.OnVisitAsync(visit)).Select(m => (m.Name, m.Role)));
        var state = VisitState.Fold(await scene.Records.Log.ReadAsync(visit));
        Assert.Equal(("on-site", "helping"), (state.People["Robin"], state.People["Kim"]));
    }

    [Fact]
    public async Task Joined_again_only_a_new_role_is_noted_and_a_role_one_may_not_have_is_refused()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var robin = await scene.AddAsync("Robin", PersonRoles.OnSite | PersonRoles.Helping);
        var visit = await scene.OpenVisitAsync();

        await scene.People.Visits.JoinAsync(visit, robin, "chat", "c-1");
        await scene.People.Visits.JoinAsync(visit, robin, "sms", PeopleScene.Phone);
        Assert.IsType<JoinRefused>(await scene.People.Visits.JoinAsync(visit, robin, "chat", "c-1", PersonRoles.Office));
        await scene.People.Visits.JoinAsync(visit, robin, "chat", "c-1", PersonRoles.Helping);

        Assert.Equal(["on-site", "helping"], (await scene.Records.Log.ReadAsync(visit)).OfType<PersonJoined>().Select(j => j.Role));
    }

    [Fact]
    public async Task A_stranger_a_revoked_person_and_another_firms_may_not_join()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var robin = await scene.EnrolAsync("Robin");
        var foreign = await scene.AddAsync("Sam", firm: "Other Invented Cooling");
        var visit = await scene.OpenVisitAsync();
        var code = await scene.People.Visits.CodeOfAsync(visit, robin.FirmId);
        await scene.People.RevokeAsync(robin);

        Assert.False(await scene.People.Visits.MayJoinAsync(visit, person: null));
        Assert.False(await scene.People.Visits.MayJoinAsync(visit, robin));
        Assert.False(await scene.People.Visits.MayJoinAsync(visit, foreign));
        Assert.IsType<JoinRefused>(await scene.People.Visits.JoinByCodeAsync(code, foreign, "team", "room-1"));
        Assert.Null(await scene.Records.Log.VisitOfAsync("team", "room-1"));
        await Assert.ThrowsAsync<RecordsException>(() => scene.People.Visits.CodeOfAsync(visit, foreign.FirmId));
    }

    [Fact]
    public async Task A_revoked_person_is_off_every_visit_and_a_new_code_lets_them_in_again()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var robin = await scene.EnrolAsync("Robin");
        var visit = await scene.OpenVisitAsync();
        await scene.People.Visits.JoinAsync(visit, robin, "chat", "c-1");

        await scene.People.RevokeAsync(robin);

        Assert.Empty(await scene.People.Visits.OnVisitAsync(visit));
        Assert.Null(await scene.People.Phones.WhoIsAsync("sms", PeopleScene.Phone));
        Assert.IsType<PersonLeft>((await scene.Records.Log.ReadAsync(visit))[^1]);
        await scene.People.Enrolment.IssueAsync(robin);
        Assert.True(await scene.People.Visits.MayJoinAsync(visit, robin));
    }

    [Fact]
    public async Task A_closed_visit_is_joined_by_no_code_and_its_code_is_free_again()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var robin = await scene.AddAsync("Robin");
        var visit = await scene.OpenVisitAsync();
        var code = await scene.People.Visits.CodeOfAsync(visit, robin.FirmId);
        await scene.Records.Log.AppendAsync(new(visit, 1, [new VisitClosed("done") { At = scene.Clock.Now, By = "Robin" }]));

        Assert.IsType<JoinRefused>(await scene.People.Visits.JoinByCodeAsync(code, robin, "team", "room-1"));
        await scene.People.Visits.CodeOfAsync(await scene.OpenVisitAsync("c-2"), robin.FirmId);
        Assert.Equal(1L, scene.Records.Scalar<long>("SELECT count(*) FROM visit_access WHERE code <> ''"));
    }

    [Fact]
    public async Task An_erased_person_is_gone_from_the_file_the_chain_holds_and_their_stop_is_still_honoured()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var robin = await scene.EnrolAsync("Robin", "+15550123");
        var visit = await scene.OpenVisitAsync(person: "Kim");
        await scene.People.Visits.JoinAsync(visit, robin, "sms", "+15550123");
        await scene.Conversations.HandleAsync(new("s-1", "sms", "+15550123", "Robin", scene.Clock.Now, "suction 24"));
        await scene.People.Phones.StopAsync("sms", "+15550123");
        var outbox = new ReplyOutbox(scene.Records.Database);
        var welcome = new Reply(new("Welcome, Robin.", "Welcome, Robin."), [], [], null, [], null, [], null, []);
        await outbox.AddAsync("sms", "+15550123", "code-1", welcome, scene.Clock.Now);
        await outbox.AddAsync("sms", "+15550199", "code-2", welcome, scene.Clock.Now);
        await new MessageInbox(scene.Records.Database).StoreAsync(new("sms", "code-1", "+15550123", "K4MX-92LR", scene.Clock.Now, scene.Clock.Now));

        Assert.Equal(3, await scene.People.EraseAsync(robin, "office"));

        Assert.Null(await scene.People.FindAsync("Robin"));
        Assert.Empty(await scene.People.Visits.OnVisitAsync(visit));
        Assert.Equal(0L, scene.Records.Scalar<long>($"SELECT count(*) FROM events WHERE personal LIKE '%{robin.Id}%' OR personal LIKE '%Robin%'"));
        Assert.Equal(0L, scene.Records.Scalar<long>("SELECT count(*) FROM channel_identities"));
        Assert.Equal(1L, scene.Records.Scalar<long>("SELECT count(*) FROM outbox"));
        Assert.Equal("+15550199", scene.Records.Scalar<string>("SELECT max(conversation) FROM outbox"));
        Assert.Equal(0L, scene.Records.Scalar<long>("SELECT count(*) FROM inbox"));
        Assert.True(await scene.People.Phones.IsStoppedAsync("sms", "+15550123"));
        var verdict = await new ChainVerifier(scene.Records.Database).VerifyAsync();
        Assert.True(verdict.Holds, verdict.Broken?.Why);
    }
}

public sealed class VisitPeopleTestsOnSqlite() : VisitPeopleTests(Store.Sqlite);

public sealed class VisitPeopleTestsOnPostgres() : VisitPeopleTests(Store.Postgres);
