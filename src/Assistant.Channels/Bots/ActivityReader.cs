using Assistant.Channels.Rooms;
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
    public static InboundMessage Read(IMessageActivity activity, DateTimeOffset at)
    {
        // An activity's id is its conversation's own: another conversation may have the same.
        var conversation = activity.Conversation?.Id ?? activity.From?.Id ?? "bot";
        var id = string.IsNullOrWhiteSpace(activity.Id) ? Guid.NewGuid().ToString("N") : activity.Id;
        return new($"{conversation} {id}", activity.ChannelId ?? "bot", conversation, Name(activity.From), at, Text(activity));
    }

    /// <summary>True where nobody else reads it, the bot is mentioned or its name stands before the words, or a button of its card was pressed.</summary>
    public static bool IsToUs(Activity activity) =>
        activity.Conversation?.IsGroup is not true
        || activity.GetMentions().Any(m => m.Mentioned?.Id is { } mentioned && mentioned == activity.Recipient?.Id)
        || (string.IsNullOrWhiteSpace(activity.Text) && activity.Value is JObject)
        || Addressing.Read(activity.Text?.Trim() ?? "", activity.Recipient?.Name ?? "").IsToUs;

    private static string Text(IMessageActivity activity)
    {
        var text = activity.Text;
        if (string.IsNullOrWhiteSpace(text) && activity.Value is JObject button)
        {
            text = button.Value<string>(ButtonText);
        }
        else if (activity.Recipient is not null && text is not null)
        {
            text = Addressing.Read(activity.RemoveRecipientMention()?.Trim() ?? "", activity.Recipient.Name ?? "").Text;
        }

        text = text?.Trim() ?? "";
        return text.Length <= LongestText ? text : text[..LongestText];
    }

    private static string Name(ChannelAccount? from) =>
        !string.IsNullOrWhiteSpace(from?.Name) ? from.Name : !string.IsNullOrWhiteSpace(from?.Id) ? from.Id : "technician";
}
