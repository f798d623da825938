using Assistant.Records.Rooms;
using Microsoft.Bot.Schema;
using Newtonsoft.Json;

namespace Assistant.Channels.Endpoint;

/// <summary>What is kept of a conversation to write there unasked. Nobody's name or account but the bot's is in it.</summary>
internal static class BotReference
{
    /// <param name="activity">One that was authenticated, and whose service address is on the list.</param>
    public static Room Of(IMessageActivity activity)
    {
        var isGroup = activity.Conversation?.IsGroup is true;
        var reference = new ConversationReference
        {
            ChannelId = activity.ChannelId,
            ServiceUrl = activity.ServiceUrl,
            Conversation = new ConversationAccount(isGroup, activity.Conversation?.ConversationType, activity.Conversation?.Id, tenantId: activity.Conversation?.TenantId),
            Bot = activity.Recipient is { } bot ? new ChannelAccount(bot.Id, bot.Name) : null,
        };
        return new(activity.ChannelId, activity.Conversation?.Id ?? "", JsonConvert.SerializeObject(reference, Formatting.None), isGroup, CanEdit: isGroup);
    }

    public static ConversationReference? Read(Room room) => room.Reference is { } json ? JsonConvert.DeserializeObject<ConversationReference>(json) : null;
}
