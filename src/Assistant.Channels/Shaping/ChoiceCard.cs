using Assistant.Channels.Bots;
using Microsoft.Bot.Schema;
using Newtonsoft.Json.Linq;

namespace Assistant.Channels.Shaping;

/// <summary>The question with its choices as a card in plain JSON (Adaptive Cards schema 1.3), for channels that show cards and no suggested actions.</summary>
internal static class ChoiceCard
{
    public const string ContentType = "application/vnd.microsoft.card.adaptive";

    public static Attachment Of(string question, IEnumerable<string> choices) => new(ContentType, content: new JObject
    {
        ["type"] = "AdaptiveCard",
        ["version"] = "1.3",
        ["body"] = new JArray(new JObject { ["type"] = "TextBlock", ["text"] = question, ["wrap"] = true, ["size"] = "Large" }),
        ["actions"] = new JArray(choices.Select(Button)),
    });

    // imBack shows the pressed words in the team's thread; where a channel does not know it, the data comes back as the activity's value.
    private static JObject Button(string choice) => new()
    {
        ["type"] = "Action.Submit",
        ["title"] = choice,
        ["data"] = new JObject
        {
            [ActivityReader.ButtonText] = choice,
            ["msteams"] = new JObject { ["type"] = "imBack", ["value"] = choice },
        },
    };
}
