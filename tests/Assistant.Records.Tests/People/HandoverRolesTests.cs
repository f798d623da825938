using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.People;
using Assistant.Records.Reminders;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.People;

/// <summary>A handover moves the place on site in what is read by person, too, and what one was to be reminded of.</summary>
public abstract class HandoverRolesTests(Store store)
{
    [Fact]
    public async Task Who_is_on_site_on_record_changes_with_the_handover_and_one_who_left_is_not_on_the_visit_until_they_are_back()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var robin = await scene.AddAsync("Robin");
        var kim = await scene.AddAsync("Kim", PersonRoles.Helping | PersonRoles.OnSite);
        var visit = await scene.OpenVisitAsync();
        await scene.People.Visits.JoinAsync(visit, robin, "chat", "c-1");
        await scene.People.Visits.JoinAsync(visit, kim, "team", "room-1");

        await AppendAsync(scene, visit, new HandedOver("Kim") { At = scene.Clock.Now, By = "Robin", From = "Robin", FromId = robin.Id, ToId = kim.Id });

        Assert.Equal([("Kim", PersonRoles.OnSite), ("Robin", PersonRoles.Helping)], await OnVisitAsync(scene, visit));
        await AppendAsync(scene, visit, new PersonLeft(kim.Id) { At = scene.Clock.Now, By = "Kim" });
        Assert.Equal([("Robin", PersonRoles.Helping)], await OnVisitAsync(scene, visit));
        await AppendAsync(scene, visit, new PersonJoined(kim.Id, "on-site") { At = scene.Clock.Now, By = "Kim" });
        Assert.Equal([("Kim", PersonRoles.OnSite), ("Robin", PersonRoles.Helping)], await OnVisitAsync(scene, visit));
    }

    [Fact]
    public async Task A_handover_among_people_whom_nobody_signed_in_stands_in_the_log_alone()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var visit = await scene.OpenVisitAsync();

        await AppendAsync(scene, visit, new HandedOver("Kim") { At = scene.Clock.Now, By = "Robin", From = "Robin" });
        await AppendAsync(scene, visit, new PersonLeft("") { At = scene.Clock.Now, By = "Robin" });
        await AppendAsync(scene, visit, new PersonJoined("", "helping") { At = scene.Clock.Now, By = "Robin" });

        Assert.Empty(await scene.People.Visits.OnVisitAsync(visit));
        var state = VisitState.Fold(await scene.Records.Log.ReadAsync(visit));
        Assert.Equal(("on-site", "helping"), (state.People["Kim"], state.People["Robin"]));
    }

    [Fact]
    public void A_reminder_of_one_who_handed_over_goes_to_the_channel_of_who_came_in_their_place()
    {
        var at = Invented.Morning;
        var visit = VisitState.Fold(
        [
            Invented.Opened(), Invented.Heard("ok"), Invented.Heard("ok", "Kim", "m-2") with { Channel = "sms" },
            new HandedOver("Kim") { At = at, By = "Robin", From = "Robin" },
        ]);
        var due = new DueReminder("v", 3, at, "Robin", "look", null, [new("chat", "c-1"), new("sms", "+1")]);

        Assert.True(due.IsLeftToAnother(visit, "chat", at));
        Assert.False(due.IsLeftToAnother(visit, "sms", at));
    }

    private static async Task AppendAsync(PeopleScene scene, string visit, VisitEvent happened) =>
        Assert.IsType<Appended>(await scene.Records.Log.AppendAsync(new(visit, (await scene.Records.Log.ReadAsync(visit)).Length, [happened])));

    private static async Task<IEnumerable<(string, PersonRoles)>> OnVisitAsync(PeopleScene scene, string visit) =>
        (await scene.People.Visits.OnVisitAsync(visit)).Select(m => (m.Name, m.Role)).Order();
}

public sealed class HandoverRolesTestsOnSqlite() : HandoverRolesTests(Store.Sqlite);

public sealed class HandoverRolesTestsOnPostgres() : HandoverRolesTests(Store.Postgres);
