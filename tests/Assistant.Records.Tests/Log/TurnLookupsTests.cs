using Assistant.Records.People;
using Assistant.Records.Signing;
using Assistant.Records.Storage.Rows;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Log;

public abstract class TurnLookupsTests(Store store)
{
    [Fact]
    public async Task A_firm_that_another_program_sets_up_is_known_at_the_next_question()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        var people = new PeopleService(records.Log, SigningKey.Open(records.Folder), TimeProvider.System);
        var before = await people.HasFirmsAsync();

        await using (var other = records.Another().NewContext())
        {
            other.Firms.Add(new FirmRow { Id = "f-1", Name = "Invented Cooling" });
            await other.SaveChangesAsync();
        }

        Assert.False(before);
        Assert.True(await people.HasFirmsAsync());
    }

    [Fact]
    public async Task A_conversation_that_another_program_turns_to_another_visit_is_found_there()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        await records.Log.AppendAsync(Invented.FirstAppend("v-1", "c-1"));
        await records.Log.AppendAsync(Invented.FirstAppend("v-2", "c-2"));
        var (channel, conversation) = await ConversationOfAsync(records, "v-1");
        var before = await records.Log.VisitOfAsync(channel, conversation);

        await using (var other = records.Another().NewContext())
        {
            (await other.Conversations.FindAsync(channel, conversation))!.VisitId = "v-2";
            await other.SaveChangesAsync();
        }

        Assert.Equal("v-1", before);
        Assert.Equal("v-2", await records.Log.VisitOfAsync(channel, conversation));
    }

    private static async Task<(string Channel, string Conversation)> ConversationOfAsync(TemporaryRecords records, string visitId)
    {
        await using var context = records.Database.NewContext();
        var row = context.Conversations.Single(c => c.VisitId == visitId);
        return (row.Channel, row.Conversation);
    }
}

public sealed class TurnLookupsTestsOnSqlite() : TurnLookupsTests(Store.Sqlite);

public sealed class TurnLookupsTestsOnPostgres() : TurnLookupsTests(Store.Postgres);
