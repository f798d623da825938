using Assistant.Channels.Text;
using Assistant.Records.People;
using Assistant.Records.Signing;
using Assistant.Trade.Facts;
using static Assistant.Trade.Facts.FactCatalogue;

namespace Assistant.Channels.Tests.Text;

/// <summary>Two people with enrolled phones on one visit.</summary>
public sealed class TwoPhonesTests : IAsyncLifetime
{
    private const string Room = "+15550101";
    private const string Roof = "+15550102";

    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-").FullName;
    private TextScene scene = null!;
    private PeopleService people = null!;

    public async Task InitializeAsync()
    {
        scene = await TextScene.OpenAsync();
        people = new(scene.Log, SigningKey.Open(folder), scene.Clock);
        scene.Admit(new EnrolledPeople(people));
        var firm = await people.SetUpAsync("Invented Refrigeration");
        foreach (var (name, number) in new[] { ("Robin", Room), ("Kim", Roof) })
        {
            var person = await people.AddAsync(firm.Id, name, PersonRoles.OnSite | PersonRoles.Helping);
            var code = await people.Enrolment.IssueAsync(person);
            Assert.Contains($"Welcome, {name}", await scene.TextAsync(number, code.Code), StringComparison.Ordinal);
        }
    }

    public async Task DisposeAsync()
    {
        await scene.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_phone_joins_a_visit_by_its_spoken_code_and_is_told_where_it_stands()
    {
        await scene.TextAsync(Room, "all safe");
        await scene.TextAsync(Room, "r22 cooler");

        Assert.Contains("Room display?", await JoinAsync(), StringComparison.Ordinal);
        Assert.Contains("Second thermometer?", await scene.TextAsync(Roof, "47"), StringComparison.Ordinal);
        Assert.Equal("Kim", Assert.Single((await scene.StateAsync(Room)).History[BoxTemperature]).By);
    }

    [Fact]
    public async Task A_reading_that_comes_in_after_its_stop_was_answered_by_another_is_a_second_reading()
    {
        await scene.TextAsync(Room, "all safe");
        await scene.TextAsync(Room, "r22 cooler");
        await JoinAsync();
        var asked = scene.Clock.Now;
        await scene.TextAsync(Roof, "45");
        await scene.Desk.ReceiveAsync("late", Room, "47", asked.AddSeconds(10));
        var reply = await scene.AnswerAsync("late");

        var state = await scene.StateAsync(Room);
        Assert.Equal([("Robin", 47.0), ("Kim", 45.0)], state.History[BoxTemperature].Select(e => (e.By, ((Reading)e.Value!).Value)));
        Assert.False(state.Facts.Has(BoxTemperatureCheck));
        Assert.Contains("box 47F", reply, StringComparison.Ordinal);
        Assert.Contains("45F", reply, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_visit_code_says_only_that_there_is_none() =>
        Assert.Equal("No open visit with that code.", await scene.TextAsync(Room, "join 2222"));

    private async Task<string> JoinAsync()
    {
        var visit = await scene.Log.VisitOfAsync(TextSettings.Channel, Room);
        return await scene.TextAsync(Roof, $"join {await people.Visits.CodeOfAsync(visit!, firmId: null)}");
    }
}
