using Assistant.Channels.Bots;
using Assistant.Channels.Terminal;
using Assistant.Dialogue.Visits;
using Moq;

namespace Assistant.Channels.Tests.Terminal;

public class TerminalAdapterTests
{
    [Fact]
    public async Task A_typed_line_goes_through_the_same_handler_and_its_reply_comes_back_as_lines()
    {
        var heard = new List<InboundMessage>();
        var conversation = new Mock<IConversation>();
        conversation.Setup(c => c.HandleAsync(It.IsAny<InboundMessage>(), It.IsAny<CancellationToken>()))
            .Callback((InboundMessage message, CancellationToken _) => heard.Add(message)).ReturnsAsync(SampleReplies.Question);
        var adapter = new TerminalAdapter(new ColdwalkBot(conversation.Object, TimeProvider.System));

        var turn = await adapter.SayAsync("t-1", "visit-1", "Sam", "nine degrees", CancellationToken.None);

        Assert.Equal("9 °C taken.\nIs the coil face clean or dirty? [clean / dirty]", turn.Text);
        Assert.Same(SampleReplies.Question, turn.Reply);
        var message = Assert.Single(heard);
        Assert.Equal(("visit-1 t-1", "terminal", "visit-1", "Sam", "nine degrees"), (message.MessageId, message.Channel, message.Conversation, message.Person, message.Text));
    }

    [Fact]
    public async Task An_empty_line_says_nothing_and_is_not_handed_on()
    {
        var conversation = new Mock<IConversation>(MockBehavior.Strict);
        var adapter = new TerminalAdapter(new ColdwalkBot(conversation.Object, TimeProvider.System));

        var turn = await adapter.SayAsync("t-1", "visit-1", "Sam", "  ", CancellationToken.None);

        Assert.Equal("", turn.Text);
        Assert.Null(turn.Reply);
    }
}
