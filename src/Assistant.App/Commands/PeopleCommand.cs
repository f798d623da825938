using System.CommandLine;
using System.Globalization;
using Assistant.App.Web;
using Assistant.Records.Log;
using Assistant.Records.People;
using Assistant.Records.Signing;

namespace Assistant.App.Commands;

/// <summary><c>people</c>: who uses these records, and from which phones. Until the first one is added, nobody signs in.</summary>
internal static class PeopleCommand
{
    private static readonly Argument<string> Name = new("NAME") { Description = "What the record calls the person by." };
    private static readonly Argument<string> Account = new("ACCOUNT") { Description = "What the provider calls the account by: the claim that COLDWALK_OIDC_CLAIM names, \"sub\" unless told." };
    private static readonly Option<string?> Firm = new("--firm") { Description = "The firm; needed once, and again only where there are several.", HelpName = "FIRM" };
    private static readonly Option<string[]> Roles = new("--role") { Description = "What the person may be on a visit; several are given one after the other.", DefaultValueFactory = _ => ["on-site"] };
    private static readonly Option<string?> Channel = new("--channel") { Description = "With --address: one phone or account only, such as \"sms\".", HelpName = "CHANNEL" };
    private static readonly Option<string?> Address = new("--address") { Description = "The lost phone's number, or the account.", HelpName = "ADDRESS" };
    private static readonly Option<string?> Page = new("--address") { Description = "Where \"serve\" is reached: the code is shown as a link and as squares to point the phone at, too.", HelpName = "URL" };
    private static readonly Option<string?> Data = Options.Data();

    static PeopleCommand() => Roles.AcceptOnlyFromAmong([.. PersonRoleNames.All]);

    public static Command Create() => new("people", "The firm's people, their roles and their phones.")
    {
        With(new("add", "Add a person; the first one, with --firm, sets up the firm.") { Name, Roles, Firm, Data }, AddAsync),
        With(new("code", "Give a person a one-time code that enrols the phone it is sent from.") { Name, Page, Data }, CodeAsync),
        With(new("key", "Give another program a key to call as this person; shown once.") { Name, Data }, KeyAsync),
        With(new("account", "Let a person sign in by their account with the OpenID Connect provider.") { Name, Account, Data }, AccountAsync),
        With(new("revoke", "A lost phone, or with no --address everything of a person who leaves.") { Name, Channel, Address, Data }, RevokeAsync),
        With(new("erase", "Erase a person's name, words and phones; readings stay and the chain still holds.") { Name, Data }, EraseAsync),
        With(new("list", "Everyone, with roles and phones.") { Data }, ListAsync),
    };

    private static Command With(Command command, Func<ParseResult, PeopleService, CancellationToken, Task> work)
    {
        command.SetWork(async (arguments, cancellation) =>
        {
            var data = arguments.Records(Data);
            await using var log = await EventLog.OpenAsync(data.Database, cancellation);
            await work(arguments, new(log, await SigningKey.OpenAsync(data.Path, log.Database, cancellation), TimeProvider.System), cancellation);
        });
        return command;
    }

    private static async Task AddAsync(ParseResult arguments, PeopleService people, CancellationToken cancellation)
    {
        var firms = await people.FirmsAsync(cancellation);
        var firm = arguments.GetValue(Firm) is { } named ? await people.SetUpAsync(named, cancellation)
            : firms is [var only] ? only
            : throw new CommandFailure(firms.IsEmpty ? "There is no firm yet. Name it once with --firm." : "There are several firms. Say whose with --firm.");
        var roles = arguments.GetRequiredValue(Roles).Aggregate(PersonRoles.None, (all, name) => all | PersonRoleNames.Find(name)!.Value);
        var person = await people.AddAsync(firm.Id, arguments.GetRequiredValue(Name), roles, cancellation);
        Console.WriteLine($"{person.Name}, {string.Join(", ", person.Roles.Names())}, of {firm.Name}. A phone is enrolled with: people code \"{person.Name}\"");
    }

    private static async Task CodeAsync(ParseResult arguments, PeopleService people, CancellationToken cancellation)
    {
        var person = await NamedAsync(arguments, people, cancellation);
        var page = arguments.GetValue(Page);
        _ = page is null ? null : Invitation.LinkOf(page, "");
        var issued = await people.Enrolment.IssueAsync(person, cancellation);
        Console.WriteLine($"{issued.Code}  for {person.Name}, once, until {Time(issued.Expires)}. It is not shown again; a code given before no longer works.");
        if (page is not null && Invitation.LinkOf(page, issued.Code) is var link)
        {
            Console.WriteLine($"{link}\n{Invitation.Drawn(link)}");
        }
    }

    private static async Task KeyAsync(ParseResult arguments, PeopleService people, CancellationToken cancellation)
    {
        var person = await NamedAsync(arguments, people, cancellation);
        var key = ApiKeys.New();
        await people.Enrolment.BindAsync(person, ApiKeys.Channel, ApiKeys.AddressOf(key), cancellation);
        Console.WriteLine(key);
        Console.Error.WriteLine($"It calls as {person.Name}: send it as \"Authorization: Bearer KEY\". It is not shown again; \"people list\" shows its digest, and revoke with --channel {ApiKeys.Channel} ends it.");
    }

    private static async Task AccountAsync(ParseResult arguments, PeopleService people, CancellationToken cancellation)
    {
        var person = await NamedAsync(arguments, people, cancellation);
        var account = arguments.GetRequiredValue(Account);
        await people.Enrolment.BindAsync(person, ProviderSignIn.Channel, account, cancellation);
        Console.WriteLine($"{person.Name} signs in by the provider's account {account}. revoke with --channel {ProviderSignIn.Channel} --address {account} ends it.");
    }

    private static async Task RevokeAsync(ParseResult arguments, PeopleService people, CancellationToken cancellation)
    {
        var person = await NamedAsync(arguments, people, cancellation);
        if (arguments.GetValue(Address) is not { } address)
        {
            await people.RevokeAsync(person, cancellation);
            Console.WriteLine($"{person.Name}: no phone speaks for them any more, no code is open, they are on no visit. A new code lets them in again.");
            return;
        }

        var channel = arguments.GetValue(Channel) ?? throw new CommandFailure("Say the channel of that address with --channel, such as --channel sms.");
        if ((await people.Phones.WhoIsAsync(channel, address, cancellation))?.Id != person.Id)
        {
            throw new CommandFailure($"{channel} {address} does not speak for {person.Name}; \"people list\" shows what does.");
        }

        await people.Phones.RevokeAsync(channel, address, cancellation);
        Console.WriteLine($"{channel} {address} speaks for nobody now. What it said before stays on record.");
    }

    private static async Task EraseAsync(ParseResult arguments, PeopleService people, CancellationToken cancellation)
    {
        var person = await NamedAsync(arguments, people, cancellation);
        var erased = await people.EraseAsync(person, "office", cancellation);
        Console.WriteLine($"{person.Name}: erased, with {erased} events of the log. What others wrote about them and the pictures are looked at by hand.");
    }

    private static async Task ListAsync(ParseResult arguments, PeopleService people, CancellationToken cancellation)
    {
        var firms = (await people.FirmsAsync(cancellation)).ToDictionary(f => f.Id, f => f.Name);
        if (firms.Count == 0)
        {
            Console.WriteLine("No firm is set up: nobody signs in, whoever reaches this program may use it.");
        }

        foreach (var (person, identities, codeExpires) in await people.ListAsync(cancellation))
        {
            Console.WriteLine($"{person.Name}, {firms[person.FirmId]}: {string.Join(", ", person.Roles.Names())}{(person.IsRevoked ? ", revoked" : "")}");
            foreach (var identity in identities)
            {
                Console.WriteLine($"  {identity.Channel} {identity.Address} since {Time(identity.BoundAt)}{(identity.RevokedAt is { } revoked ? $", revoked {Time(revoked)}" : "")}");
            }

            if (codeExpires is { } expires)
            {
                Console.WriteLine($"  a code is open until {Time(expires)}");
            }
        }
    }

    private static async Task<Person> NamedAsync(ParseResult arguments, PeopleService people, CancellationToken cancellation) =>
        await people.FindAsync(arguments.GetRequiredValue(Name), cancellation)
            ?? throw new CommandFailure($"There is nobody called {arguments.GetRequiredValue(Name)}; \"people list\" shows who there is.");

    private static string Time(DateTimeOffset time) => time.ToLocalTime().ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
