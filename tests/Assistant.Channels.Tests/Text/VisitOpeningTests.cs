using System.Collections.Immutable;
using Assistant.Channels.Text;
using Assistant.Records.Assets;
using Assistant.Trade.Quantities;

namespace Assistant.Channels.Tests.Text;

public class VisitOpeningTests : IAsyncLifetime
{
    private const string Phone = "+15550101";
    private TextScene scene = null!;

    public async Task InitializeAsync() => scene = await TextScene.OpenAsync();

    public async Task DisposeAsync() => await scene.DisposeAsync();

    [Fact]
    public async Task A_visit_by_text_starts_from_the_record_of_the_equipment_it_names_and_in_its_units()
    {
        await RecordAsync("florist", "Florist, Mill Street", "roof unit", ("refrigerant", "R449A"), ("application", "cooler"));

        var first = await scene.TextAsync(Phone, "Visit at mill street, metric");
        await scene.TextAsync(Phone, "all safe");
        var box = await scene.TextAsync(Phone, "box 9");
        scene.Clock.Add(TimeSpan.FromDays(1));
        var second = await scene.TextAsync(Phone, "new visit florist");
        var state = await scene.StateAsync(Phone);

        Assert.Contains("Florist, Mill Street, R449A.", first, StringComparison.Ordinal);
        Assert.Contains("box 9C", box, StringComparison.Ordinal);
        Assert.Equal(("florist", UnitSystem.Metric, true), (state.AssetId, state.Units, state.Before is not null));
        Assert.Contains("R449A. Last visit 2026-07-14: no verdict.", second, StringComparison.Ordinal);
        Assert.DoesNotContain(Trade.Facts.FactCatalogue.BoxTemperature, state.History);
    }

    [Fact]
    public async Task A_place_nobody_knows_is_said_to_be_new_and_is_found_the_next_time()
    {
        var first = await scene.TextAsync(Phone, "start a visit at Pine St diner");
        await scene.TextAsync(Phone, "R404A");
        scene.Clock.Add(TimeSpan.FromDays(1));
        var second = await scene.TextAsync(Phone, "visit at pine st");

        Assert.Contains("Visit at Pine St diner, new on record.", first, StringComparison.Ordinal);
        Assert.Contains("Pine St diner, R404A.", second, StringComparison.Ordinal);
        Assert.Equal("R404A", (await scene.StateAsync(Phone)).Facts.Word(Trade.Facts.FactCatalogue.Refrigerant));
    }

    [Fact]
    public async Task Several_that_hold_the_words_are_named_and_one_of_them_in_full_is_enough()
    {
        await RecordAsync("a", "Mill Street", "unit");
        await RecordAsync("b", "Mill Street annex", "unit");
        await RecordAsync("c", "Old Mill", "roof unit");

        var which = await scene.TextAsync(Phone, "visit at mill");
        Assert.Null(await scene.Log.VisitOfAsync(TextSettings.Channel, Phone));
        await scene.TextAsync(Phone, "visit at mill street");
        var exact = (await scene.StateAsync(Phone)).AssetId;
        await scene.TextAsync(Phone, "visit at old mill, roof unit");

        Assert.Equal("Which: Mill Street; Mill Street annex; Old Mill, roof unit? Text: visit at, and one of them in full. No visit was begun.", which);
        Assert.Equal(("a", "c"), (exact, (await scene.StateAsync(Phone)).AssetId));
    }

    [Theory]
    [InlineData("new visit")]
    [InlineData("start a call")]
    [InlineData("visit at")]
    public async Task Without_a_name_it_is_asked_where_and_nothing_is_begun(string text)
    {
        Assert.StartsWith("Where?", await scene.TextAsync(Phone, text), StringComparison.Ordinal);
        Assert.Null(await scene.Log.VisitOfAsync(TextSettings.Channel, Phone));
    }

    [Fact]
    public async Task The_message_brought_again_before_its_answer_was_noted_opens_no_second_visit()
    {
        await scene.TextAsync(Phone, "visit at Pine St diner", "m1");
        var visit = await scene.Log.VisitOfAsync(TextSettings.Channel, Phone);
        var sent = scene.Clock.Now;
        await scene.Desk.ReceiveAsync("m2", Phone, "visit at  Pine St diner", sent);
        await scene.Desk.HandleAllAsync();

        Assert.Equal(visit, await scene.Log.VisitOfAsync(TextSettings.Channel, Phone));
        Assert.Single(await new AssetStore(scene.Log.Database).ListAsync());
    }

    [Theory]
    [InlineData("call is due")]
    [InlineData("calling yes")]
    [InlineData("called for cooling")]
    public async Task What_only_looks_like_it_is_taken_as_before(string text)
    {
        await scene.TextAsync(Phone, "all safe");
        var visit = await scene.Log.VisitOfAsync(TextSettings.Channel, Phone);
        await scene.TextAsync(Phone, text);

        Assert.Equal(visit, await scene.Log.VisitOfAsync(TextSettings.Channel, Phone));
    }

    private Task<int> RecordAsync(string id, string site, string unit, params (string Name, string Text)[] details) =>
        new AssetStore(scene.Log.Database).RecordAsync(new(id, site, unit, details.ToImmutableSortedDictionary(d => d.Name, d => d.Text)), scene.Clock.Now);
}
