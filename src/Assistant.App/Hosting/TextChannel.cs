using Assistant.Channels.Text;
using Assistant.Records.Outbox;
using Assistant.Records.People;

namespace Assistant.App.Hosting;

/// <summary>Puts the text-message channel together.</summary>
internal static class TextChannel
{
    /// <summary>A gateway on the same machine or in the same house answers within this, or its answer is not waited for.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    public static void AddTextMessages(this IServiceCollection services, CallRoom room, PeopleService people, TextSettings settings)
    {
        var (log, dialogue) = (room.Log, room.Dialogue);
        var enrolled = new EnrolledPeople(people);
        services.AddSingleton(settings);
        services.AddSingleton(provider => new TextDesk(
            log, room.Conversations, dialogue.Engine, dialogue.Phrases, enrolled, settings, provider.GetRequiredService<TimeProvider>(), Console.Error.WriteLine,
            TextEnvironment.PageAddress() is { } page ? (visit, cancellation) => AddressAsync(room.Links, page, visit, cancellation) : null));
        services.AddSingleton(provider => new TextReminders(log, room.Conversations, dialogue.Engine, dialogue.Phrases, provider.GetRequiredService<TimeProvider>()));
        services.AddSingleton(provider => new OutboxDeliverer(
            new(log.Database), new GatewaySender(new() { Timeout = Patience }, settings, dialogue.Phrases, enrolled), new(), provider.GetRequiredService<TimeProvider>()));
        services.AddSingleton(provider => ActivatorUtilities.CreateInstance<TextService>(provider, log.Database.WorkersAtOnce));
        services.AddHostedService(provider => provider.GetRequiredService<TextService>());
    }

    private static async Task<(string, DateTimeOffset)> AddressAsync(ReportLinks links, Uri page, string visit, CancellationToken cancellation)
    {
        await links.Heads.NoteAsync(visit, cancellation);
        var link = links.Mint(visit, ReportLinks.UsualDays);
        return (page.GetLeftPart(UriPartial.Authority) + link.Path, link.Until);
    }
}
