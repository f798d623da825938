using Assistant.Dialogue.Files;
using Assistant.Dialogue.Turns;

namespace Assistant.Dialogue.Tests.Turns;

public sealed class ShortWordsTests
{
    [Theory]
    [InlineData("I'm at the unit!", "im at the unit")]
    [InlineData("  OK,  up there. ", "ok up there")]
    [InlineData("...", "")]
    public void A_message_is_compared_without_capitals_and_punctuation(string text, string plain) => Assert.Equal(plain, ShortWords.Plain(text));

    [Theory]
    [InlineData("yep")]
    [InlineData("that is right")]
    public void A_yes_is_the_whole_message(string plain)
    {
        Assert.True(Conversation.Words.IsYes(plain));
        Assert.False(Conversation.Words.IsYes(plain + " but the head is 200"));
    }

    [Theory]
    [InlineData("the fans fire up and run", false)]
    [InlineData("sight glass in my eyeline", false)]
    [InlineData("there is a fire in the plant room", true)]
    [InlineData("help he passed out", true)]
    public void An_emergency_is_heard_anywhere_in_the_message_but_not_inside_other_words(string plain, bool heard) =>
        Assert.Equal(heard, Conversation.Words.IsEmergency(plain));

    [Theory]
    [InlineData("yes: [\"yes\"]", DefectKind.MissingField)]
    [InlineData("perhaps: [\"maybe\"]", DefectKind.UnknownField)]
    [InlineData("yes: [\"That's right\"]", DefectKind.BadValue)]
    public void A_mistake_in_the_lists_is_named(string text, DefectKind kind)
    {
        var thrown = Assert.Throws<DialogDataException>(() => ShortWords.Load(new("words/test.yaml", text)));

        Assert.Contains(thrown.Defects, d => d.Kind == kind && d.File == "words/test.yaml");
    }
}
