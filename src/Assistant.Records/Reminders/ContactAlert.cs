using Assistant.Dialogue.Replies;
using Assistant.Records.Outbox;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Reminders;

/// <summary>
/// Alerts the contact of a person who works alone and has not answered, through the durable outbox: on every phone and account that speaks
/// for the contact; where none does, in every conversation of the visit; always under the contact's name too, for whoever watches over it.
/// </summary>
public sealed class ContactAlert(IRecordsDatabase database)
{
    /// <summary>The outbox's channel for alerts by name.</summary>
    public const string Channel = "contact";

    private readonly ReplyOutbox outbox = new(database);

    /// <summary>Puts the alert in; the same alert again is put in once.</summary>
    public async Task SendAsync(DueReminder due, Reply alert, DateTimeOffset now, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(due);
        if (due.CheckIn is not { } expected)
        {
            return;
        }

        var id = $"check-in {due.VisitId} {due.EventNumber}";
        var addresses = await AddressesAsync(expected.Contact, cancellation);
        foreach (var (channel, conversation) in addresses.Count > 0 ? addresses : due.Conversations.Select(c => (c.Channel, c.Conversation)))
        {
            // The outbox takes an id once a channel: each of the contact's phones gets its own.
            await outbox.AddAsync(channel, conversation, $"{id} {conversation}", alert, now, cancellation);
        }

        await outbox.AddAsync(Channel, expected.Contact, id, alert, now, cancellation);
    }

    private Task<List<(string Channel, string Address)>> AddressesAsync(string name, CancellationToken cancellation) => database.UseAsync(async context =>
    {
        var key = name.Trim().ToUpperInvariant();
        var found = await context.ChannelIdentities.AsNoTracking().Where(i => i.RevokedAt == null)
            .Join(context.People.Where(p => p.NameKey == key && p.RevokedAt == null), i => i.PersonId, p => p.Id, (i, p) => new { i.Channel, i.Address })
            .ToListAsync(cancellation);
        return found.ConvertAll(i => (i.Channel, i.Address));
    });
}
