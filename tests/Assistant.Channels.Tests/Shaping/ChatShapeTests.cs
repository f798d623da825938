using Assistant.Channels.Shaping;
using Newtonsoft.Json.Linq;

namespace Assistant.Channels.Tests.Shaping;

public class ChatShapeTests
{
    [Fact]
    public void The_verdict_comes_first_and_the_one_next_thing_last()
    {
        var paragraphs = ChatShape.Of(SampleReplies.VerdictWithCaution).Text.Split("\n\n");

        Assert.Equal(
            ["VERDICT, established: dirty condenser.", "Split 26 K against 12 K.", "CAUTION: lock out before hands go near the fan.", "Clean it, then tell me the head again."],
            paragraphs);
    }

    [Fact]
    public void The_spoken_form_keeps_the_caution() =>
        Assert.Equal("Dirty condenser. Lock out first. Clean it, head again.", ChatShape.Of(SampleReplies.VerdictWithCaution).Speak);

    [Fact]
    public void Choices_become_buttons_that_say_the_word()
    {
        var actions = ChatShape.Of(SampleReplies.Question).SuggestedActions.Actions;

        Assert.Equal(["clean", "dirty"], actions.Select(a => (string)a.Value));
    }

    [Fact]
    public void The_card_is_plain_json_that_carries_the_question_and_hands_back_the_pressed_word()
    {
        var card = Assert.Single(ChatShape.Of(SampleReplies.Question).Attachments);

        Assert.Equal("application/vnd.microsoft.card.adaptive", card.ContentType);
        var content = Assert.IsType<JObject>(card.Content);
        Assert.Equal("Is the coil face clean or dirty?", (string?)content.SelectToken("body[0].text"));
        Assert.Equal("dirty", (string?)content.SelectToken("actions[1].data.say"));
    }

    [Fact]
    public void A_free_answer_has_no_card_and_no_buttons()
    {
        var activity = ChatShape.Of(SampleReplies.VerdictWithCaution);

        Assert.Null(activity.SuggestedActions);
        Assert.Empty(activity.Attachments ?? []);
    }
}
