using Assistant.Dialogue.Visits;
using Assistant.Records.Conversations;
using Assistant.Records.Pictures;
using Assistant.Records.Tests.Pictures;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Conversations;

public abstract class PictureServiceTests(Store store)
{
    [Fact]
    public async Task A_picture_is_kept_and_noted_in_the_visit_once()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var conversations = new ConversationService(records.Log, new CountingEngine());
        using var pictures = new PictureStore(records.Database);
        var service = new PictureService(records.Log, pictures, conversations);
        await conversations.HandleAsync(Invented.Message("m-1"));
        var sent = new InboundPicture("chat", "c-1", "Robin", Invented.Morning, InventedPictures.Marked(400, 300), "oil at the return bend");

        var added = await service.AddAsync(sent);
        var again = await service.AddAsync(sent);

        Assert.Equal((3, false), (added.EventNumber, added.WasThere));
        Assert.Equal(added with { WasThere = true }, again);
        var taken = Assert.Single((await records.Log.ReadAsync(added.VisitId)).OfType<PictureTaken>());
        Assert.Equal("oil at the return bend", taken.Caption);
        var kept = await pictures.FindAsync(added.PictureId);
        Assert.Equal((400, 300), (kept!.Width, kept.Height));
        Assert.Equal("38 after 3", (await conversations.HandleAsync(Invented.Message("m-2"))).Say.Full);
    }

    [Fact]
    public async Task What_is_refused_leaves_no_trace()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var conversations = new ConversationService(records.Log, new CountingEngine());
        using var pictures = new PictureStore(records.Database);
        var service = new PictureService(records.Log, pictures, conversations);

        await Assert.ThrowsAsync<PictureRefusedException>(() =>
            service.AddAsync(new("chat", "c-1", "Robin", Invented.Morning, "no picture"u8.ToArray(), "")));

        Assert.Null(await records.Log.VisitOfAsync("chat", "c-1"));
    }
}

public sealed class PictureServiceTestsOnSqlite() : PictureServiceTests(Store.Sqlite);

public sealed class PictureServiceTestsOnPostgres() : PictureServiceTests(Store.Postgres);
