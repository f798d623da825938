using Assistant.Channels.Shaping;
using Microsoft.Bot.Builder;
using Microsoft.Bot.Schema;

namespace Assistant.Channels.Bots;

/// <summary>The one handler behind every channel: an activity becomes a message, its reply is shaped for the channel it came from.</summary>
/// <param name="clock">By it a message is dated: a channel's own timestamps are not trusted.</param>
public sealed class ColdwalkBot(IConversation conversation, TimeProvider clock) : ActivityHandler
{
    protected override async Task OnMessageActivityAsync(ITurnContext<IMessageActivity> turnContext, CancellationToken cancellationToken)
    {
        var message = ActivityReader.Read(turnContext.Activity, clock.GetUtcNow());
        if (message.Text.Length == 0)
        {
            return;
        }

        var reply = await conversation.HandleAsync(message, cancellationToken);
        await turnContext.SendActivityAsync(ReplyShaping.For(message.Channel, reply), cancellationToken);
    }
}
