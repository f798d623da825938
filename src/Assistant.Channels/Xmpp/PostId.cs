using System.Security.Cryptography;
using System.Text;
using Assistant.Records.Outbox;

namespace Assistant.Channels.Xmpp;

/// <summary>The id under which a reply is posted, the same at every attempt.</summary>
internal static class PostId
{
    // Numbers alone will not do: they begin anew with new records, and a room's memory does not.
    public static string Of(OutboxItem item) =>
        $"cw-{item.Id}-{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{item.Conversation}\n{item.MessageId}")).AsSpan(0, 8))}";
}
