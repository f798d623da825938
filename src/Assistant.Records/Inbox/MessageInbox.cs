using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Inbox;

/// <summary>
/// The messages that gateways brought, stored before they are answered for. The same id is stored once, and so is the same text of the
/// same sender and second, which is how a network that delivers twice looks. Words are kept only until they are handled.
/// </summary>
public sealed class MessageInbox(IRecordsDatabase database)
{
    private const int MostLooked = 500;

    /// <returns>False where it was there already.</returns>
    public async Task<bool> StoreAsync(ReceivedMessage message, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(message);
        try
        {
            await database.UseAsync(async context =>
            {
                context.Inbox.Add(new()
                {
                    Channel = message.Channel,
                    MessageId = message.MessageId,
                    Conversation = message.Conversation,
                    Text = message.Text,
                    SentAt = message.SentAt,
                    ReceivedAt = message.ReceivedAt,
                    Digest = DigestOf(message),
                });
                return await context.SaveChangesAsync(cancellation);
            });
            return true;
        }
        catch (RecordsException there) when (there.InnerException is { } cause && database.IsAlreadyThere(cause))
        {
            return false;
        }
    }

    /// <summary>
    /// Of the messages not handled yet the one that was sent first, or null. Where it is not known whether a reply had reached the sender
    /// before, the message waits until it is: what it answers hangs on that.
    /// </summary>
    /// <param name="resolution">How finely the gateway tells the time.</param>
    public Task<ReceivedMessage?> NextAsync(string channel, TimeSpan resolution = default, CancellationToken cancellation = default) => database.UseAsync(async context =>
    {
        var doubtful = await context.Outbox.AsNoTracking()
            .Where(o => o.Channel == channel && o.TriedAt != null && o.DeliveredAt == null && o.GaveUpAt == null)
            .Select(o => new { o.Conversation, o.TriedAt }).ToListAsync(cancellation);
        var waiting = await context.Inbox.AsNoTracking().Where(i => i.Channel == channel && i.HandledAt == null)
            .OrderBy(i => i.SentAt).ThenBy(i => i.Id).Take(doubtful.Count == 0 ? 1 : MostLooked)
            .Select(i => new ReceivedMessage(i.Channel, i.MessageId, i.Conversation, i.Text, i.SentAt, i.ReceivedAt)).ToListAsync(cancellation);
        return waiting.Find(m => !doubtful.Exists(d => d.Conversation == m.Conversation && d.TriedAt <= m.SentAt + resolution));
    });

    /// <summary>The message is handled: its words go.</summary>
    public Task HandledAsync(string channel, string messageId, DateTimeOffset at, CancellationToken cancellation = default) => database.UseAsync(context =>
        context.Inbox.Where(i => i.Channel == channel && i.MessageId == messageId)
            .ExecuteUpdateAsync(set => set.SetProperty(i => i.HandledAt, at).SetProperty(i => i.Text, ""), cancellation));

    /// <summary>Forgets the handled messages received before that time: nothing brings those again.</summary>
    public Task<int> ForgetAsync(DateTimeOffset before, CancellationToken cancellation = default) => database.UseAsync(context =>
        context.Inbox.Where(i => i.HandledAt != null && i.ReceivedAt < before).ExecuteDeleteAsync(cancellation));

    private static string DigestOf(ReceivedMessage message) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(
        string.Create(CultureInfo.InvariantCulture, $"{message.Conversation}\n{message.SentAt.ToUnixTimeSeconds()}\n{message.Text}"))));
}

/// <summary>A message as a gateway brought it.</summary>
/// <param name="SentAt">When it was sent, by the gateway's time.</param>
public sealed record ReceivedMessage(string Channel, string MessageId, string Conversation, string Text, DateTimeOffset SentAt, DateTimeOffset ReceivedAt);
