using Assistant.Records.Conversations;
using Assistant.Records.People;
using Assistant.Records.Signing;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.People;

/// <summary>An invented firm with people, a clock that is set and chance that repeats.</summary>
internal sealed class PeopleScene : IAsyncDisposable
{
    public const string Phone = "+15550100";

    private PeopleScene(TemporaryRecords records)
    {
        Records = records;
        var chance = new Random(7);
        People = new(records.Log, SigningKey.Open(records.Folder), Clock, chance.Next);
        Conversations = new(records.Log, new CountingEngine());
    }

    public TemporaryRecords Records { get; }

    public StandingClock Clock { get; } = new(Invented.Morning);

    public PeopleService People { get; }

    public ConversationService Conversations { get; }

    public static async Task<PeopleScene> OpenAsync(Store store) => new(await TemporaryRecords.OpenAsync(store));

    public async Task<Person> AddAsync(string name, PersonRoles roles = PersonRoles.OnSite, string firm = "Invented Cooling") =>
        await People.AddAsync((await People.SetUpAsync(firm)).Id, name, roles);

    public async Task<Person> EnrolAsync(string name, string address = Phone)
    {
        var person = await AddAsync(name);
        var code = await People.Enrolment.IssueAsync(person);
        Assert.IsType<Enrolled>(await People.Enrolment.EnrolAsync("sms", address, code.Code));
        return person;
    }

    public async Task<string> OpenVisitAsync(string conversation = "c-1", string person = "Robin") =>
        (await Conversations.OpenVisitAsync(new("chat", conversation, "Invented Diner", null, default, person, Clock.Now))).VisitId;

    public async ValueTask DisposeAsync()
    {
        Conversations.Dispose();
        await Records.DisposeAsync();
    }
}

/// <summary>A clock that stands until it is moved on.</summary>
internal sealed class StandingClock(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; private set; } = now;

    public void Pass(TimeSpan time) => Now += time;

    public override DateTimeOffset GetUtcNow() => Now;
}
