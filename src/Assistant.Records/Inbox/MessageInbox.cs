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
            await database.WriteAsync(async context =>
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
            }, cancellation);
            return true;
        }
        catch (RecordsException there) when (there.InnerException is { } cause && database.IsAlreadyThere(cause))
        {
            return false;
        }
    }

    /// <summary>
    /// Takes the message that was sent first of those not handled yet, or null. Nobody else takes it, or one of its conversation sent later,
    /// until it is handled or given back. Where it is not known whether a reply had reached the sender before, the message waits until it
    /// is: what it answers hangs on that.
    /// </summary>
    /// <param name="resolution">How finely the gateway tells the time.</param>
    public async Task<TakenMessage?> TakeNextAsync(string channel, TimeSpan resolution = default, CancellationToken cancellation = default)
    {
        var first = await database.UseAsync(async context =>
        {
            var doubtful = await context.Outbox.AsNoTracking()
                .Where(o => o.Channel == channel && o.TriedAt != null && o.DeliveredAt == null && o.GaveUpAt == null)
                .Select(o => new { o.Conversation, o.TriedAt }).ToListAsync(cancellation);
            var waiting = await context.Inbox.AsNoTracking().Where(i => i.Channel == channel && i.HandledAt == null)
                .OrderBy(i => i.SentAt).ThenBy(i => i.Id).Take(MostLooked).Select(i => new { i.Id, i.Conversation, i.SentAt }).ToListAsync(cancellation);
            return waiting.DistinctBy(m => m.Conversation)
                .Where(m => !doubtful.Exists(d => d.Conversation == m.Conversation && d.TriedAt <= m.SentAt + resolution))
                .Select(m => m.Id).ToList();
        });
        return first.Count == 0 ? null : await TakenMessage.TakeAsync(database, first, cancellation);
    }

    /// <summary>Forgets the handled messages received before that time: nothing brings those again.</summary>
    public Task<int> ForgetAsync(DateTimeOffset before, CancellationToken cancellation = default) => database.WriteAsync(context =>
        context.Inbox.Where(i => i.HandledAt != null && i.ReceivedAt < before).ExecuteDeleteAsync(cancellation), cancellation);

    private static string DigestOf(ReceivedMessage message) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(
        string.Create(CultureInfo.InvariantCulture, $"{message.Conversation}\n{message.SentAt.ToUnixTimeSeconds()}\n{message.Text}"))));
}
