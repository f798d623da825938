using Assistant.Dialogue.Visits;
using Microsoft.Bot.Schema;
using Newtonsoft.Json.Linq;

namespace Assistant.Channels.Bots;

/// <summary>Reads a message out of an activity, whichever channel it came by.</summary>
internal static class ActivityReader
{
    /// <summary>The name under which a card's button hands back the words it stands for.</summary>
    public const string ButtonText = "say";

    /// <summary>Longer messages are cut: nobody types a reading of this length, and the store keeps what is said.</summary>
    public const int LongestText = 2000;

    /// <summary>The message; its text is empty where the activity brings none.</summary>
    public static InboundMessage Read(IMessageActivity activity, DateTimeOffset at) => new(
        MessageId: string.IsNullOrWhiteSpace(activity.Id) ? Guid.NewGuid().ToString("N") : activity.Id,
        Channel: activity.ChannelId ?? "bot",
        Conversation: activity.Conversation?.Id ?? activity.From?.Id ?? "bot",
        Person: Name(activity.From),
        At: at,
        Text: Text(activity));

    private static string Text(IMessageActivity activity)
    {
        var text = activity.Text;
        if (string.IsNullOrWhiteSpace(text) && activity.Value is JObject button)
        {
            text = button.Value<string>(ButtonText);
        }
        else if (activity.Recipient is not null && text is not null)
        {
            text = activity.RemoveRecipientMention();
        }

        text = text?.Trim() ?? "";
        return text.Length <= LongestText ? text : text[..LongestText];
    }

    private static string Name(ChannelAccount? from) =>
        !string.IsNullOrWhiteSpace(from?.Name) ? from.Name : !string.IsNullOrWhiteSpace(from?.Id) ? from.Id : "technician";
}
