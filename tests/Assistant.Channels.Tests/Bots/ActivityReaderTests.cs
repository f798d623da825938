using Assistant.Channels.Bots;
using Microsoft.Bot.Schema;
using Newtonsoft.Json.Linq;

namespace Assistant.Channels.Tests.Bots;

public class ActivityReaderTests
{
    private static readonly DateTimeOffset Noon = new(2026, 7, 14, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void The_activity_id_within_its_conversation_is_the_message_id()
    {
        var message = ActivityReader.Read(Said("nine"), Noon);

        Assert.Equal(("c-1 a-1", "msteams", "c-1", "Kim", Noon, "nine"), (message.MessageId, message.Channel, message.Conversation, message.Person, message.At, message.Text));
    }

    [Fact]
    public void A_mention_of_the_bot_is_not_part_of_what_was_said()
    {
        var activity = Said("<at>Coldwalk</at> head 24 bar");
        activity.Recipient = new ChannelAccount("bot", "Coldwalk");
        activity.Entities = [Entity(new Mention { Mentioned = activity.Recipient, Text = "<at>Coldwalk</at>", Type = "mention" })];

        Assert.Equal("head 24 bar", ActivityReader.Read(activity, Noon).Text);
    }

    [Fact]
    public void A_pressed_card_button_says_its_word()
    {
        var activity = Said(null);
        activity.Value = new JObject { ["say"] = "dirty" };

        Assert.Equal("dirty", ActivityReader.Read(activity, Noon).Text);
    }

    [Fact]
    public void A_nameless_person_goes_by_the_channels_id()
    {
        var activity = Said("nine");
        activity.From = new ChannelAccount("29:1abc");

        Assert.Equal("29:1abc", ActivityReader.Read(activity, Noon).Person);
    }

    [Fact]
    public void Very_long_text_is_cut_at_two_thousand_characters() =>
        Assert.Equal(2000, ActivityReader.Read(Said(new string('9', 5000)), Noon).Text.Length);

    private static Activity Said(string? text) => new()
    {
        Type = ActivityTypes.Message,
        Id = "a-1",
        ChannelId = "msteams",
        Conversation = new ConversationAccount(id: "c-1"),
        From = new ChannelAccount("29:1abc", "Kim"),
        Text = text,
    };

    private static Entity Entity(Mention mention)
    {
        var entity = new Entity();
        entity.SetAs(mention);
        return entity;
    }
}
