using Assistant.Records.People;
using Assistant.Records.Storage;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.People;

public abstract class EnrolmentTests(Store store)
{
    [Fact]
    public async Task A_code_binds_the_phone_it_is_sent_from_however_it_is_typed()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var robin = await scene.AddAsync("Robin");
        var issued = await scene.People.Enrolment.IssueAsync(robin);

        var enrolled = await scene.People.Enrolment.EnrolAsync("sms", PeopleScene.Phone, $"  {issued.Code.Replace('-', ' ').ToLowerInvariant()} ");

        Assert.Equal(robin, Assert.IsType<Enrolled>(enrolled).Person);
        Assert.Equal(robin, await scene.People.Phones.WhoIsAsync("sms", PeopleScene.Phone));
        Assert.Null(await scene.People.Phones.WhoIsAsync("team", PeopleScene.Phone));
    }

    [Fact]
    public async Task A_code_works_once()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var issued = await scene.People.Enrolment.IssueAsync(await scene.AddAsync("Robin"));
        await scene.People.Enrolment.EnrolAsync("sms", PeopleScene.Phone, issued.Code);

        Assert.IsType<CodeRefused>(await scene.People.Enrolment.EnrolAsync("sms", "+15550199", issued.Code));
        Assert.Null(await scene.People.Phones.WhoIsAsync("sms", "+15550199"));
    }

    [Fact]
    public async Task Of_two_phones_that_send_one_code_at_once_one_is_enrolled()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var issued = await scene.People.Enrolment.IssueAsync(await scene.AddAsync("Robin"));

        var results = await Task.WhenAll(Enumerable.Range(0, 6).Select(i => Task.Run(() => scene.People.Enrolment.EnrolAsync("sms", $"+1555010{i}", issued.Code))));

        Assert.Single(results.OfType<Enrolled>());
        Assert.Single((await scene.People.ListAsync())[0].Identities);
    }

    [Fact]
    public async Task A_code_expires_and_a_new_one_voids_the_old()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var robin = await scene.AddAsync("Robin");
        var first = await scene.People.Enrolment.IssueAsync(robin);
        var second = await scene.People.Enrolment.IssueAsync(robin);

        Assert.IsType<CodeRefused>(await scene.People.Enrolment.EnrolAsync("sms", PeopleScene.Phone, first.Code));
        scene.Clock.Pass(TimeSpan.FromHours(24));
        Assert.IsType<CodeRefused>(await scene.People.Enrolment.EnrolAsync("sms", PeopleScene.Phone, second.Code));
    }

    [Fact]
    public async Task After_five_wrong_codes_an_address_is_not_looked_at_for_an_hour_even_with_the_right_one()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var issued = await scene.People.Enrolment.IssueAsync(await scene.AddAsync("Robin"));
        for (var i = 0; i < 5; i++)
        {
            Assert.IsType<CodeRefused>(await scene.People.Enrolment.EnrolAsync("sms", PeopleScene.Phone, "2222-2222"));
        }

        var locked = Assert.IsType<TooManyTries>(await scene.People.Enrolment.EnrolAsync("sms", PeopleScene.Phone, issued.Code));
        Assert.Equal(scene.Clock.Now.AddHours(1), locked.Until);
        scene.Clock.Pass(TimeSpan.FromHours(1));
        Assert.IsType<Enrolled>(await scene.People.Enrolment.EnrolAsync("sms", PeopleScene.Phone, issued.Code));
    }

    [Fact]
    public async Task Many_addresses_together_run_into_a_limit_too()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        for (var i = 0; i < 200; i++)
        {
            Assert.IsType<CodeRefused>(await scene.People.Enrolment.EnrolAsync("sms", $"+1555{i:0000}", "2222-2222"));
        }

        Assert.IsType<TooManyTries>(await scene.People.Enrolment.EnrolAsync("sms", "+15559999", "2222-2222"));
    }

    [Fact]
    public async Task Neither_the_code_nor_a_strangers_number_is_kept_in_the_database()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var issued = await scene.People.Enrolment.IssueAsync(await scene.AddAsync("Robin"));
        await scene.People.Enrolment.EnrolAsync("sms", "+15557777", "2222-2222");
        await scene.People.Phones.StopAsync("sms", "+15558888");

        Assert.False(scene.Records.Holds(issued.Code));
        Assert.False(scene.Records.Holds("+1555"));
        Assert.True(scene.Records.Holds("Robin"));
    }

    [Fact]
    public async Task A_lost_phone_speaks_for_nobody_and_comes_back_with_a_new_code()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        var robin = await scene.EnrolAsync("Robin");

        Assert.True(await scene.People.Phones.RevokeAsync("sms", PeopleScene.Phone));
        Assert.False(await scene.People.Phones.RevokeAsync("sms", PeopleScene.Phone));
        Assert.Null(await scene.People.Phones.WhoIsAsync("sms", PeopleScene.Phone));
        Assert.IsType<Enrolled>(await scene.People.Enrolment.EnrolAsync("sms", PeopleScene.Phone, (await scene.People.Enrolment.IssueAsync(robin)).Code));
        Assert.Equal(robin, await scene.People.Phones.WhoIsAsync("sms", PeopleScene.Phone));
    }

    [Fact]
    public async Task A_number_that_goes_to_another_person_speaks_for_the_new_one()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        await scene.EnrolAsync("Robin");
        var kim = await scene.EnrolAsync("Kim");

        Assert.Equal(kim, await scene.People.Phones.WhoIsAsync("sms", PeopleScene.Phone));
    }

    [Fact]
    public async Task Stop_holds_until_start_whoever_has_the_number()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        await scene.People.Phones.StopAsync("sms", PeopleScene.Phone);
        await scene.People.Phones.StopAsync("sms", PeopleScene.Phone);
        var issued = await scene.People.Enrolment.IssueAsync(await scene.AddAsync("Robin"));

        Assert.True(Assert.IsType<Enrolled>(await scene.People.Enrolment.EnrolAsync("sms", PeopleScene.Phone, issued.Code)).IsStopped);
        Assert.True(await scene.People.Phones.IsStoppedAsync("sms", PeopleScene.Phone));
        await scene.People.Phones.StartAsync("sms", PeopleScene.Phone);
        Assert.False(await scene.People.Phones.IsStoppedAsync("sms", PeopleScene.Phone));
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData("a\nb")]
    public async Task A_name_that_is_none_is_refused(string name)
    {
        await using var scene = await PeopleScene.OpenAsync(store);

        var refused = await Assert.ThrowsAsync<RecordsException>(() => scene.AddAsync(name));
        Assert.Equal("A name has one to eighty letters.", refused.Message);
    }

    [Fact]
    public async Task Two_people_of_one_name_are_told_apart()
    {
        await using var scene = await PeopleScene.OpenAsync(store);
        await scene.AddAsync("Robin");

        var refused = await Assert.ThrowsAsync<RecordsException>(() => scene.AddAsync("ROBIN"));
        Assert.Equal((RecordsFault.Refused, "There is a ROBIN already. Add something to the name that tells the two apart."), (refused.Fault, refused.Message));
    }
}

public sealed class EnrolmentTestsOnSqlite() : EnrolmentTests(Store.Sqlite);

public sealed class EnrolmentTestsOnPostgres() : EnrolmentTests(Store.Postgres);
