using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;

namespace Assistant.Channels;

/// <summary>A conversation that can be put on a visit by its code; whoever speaks in it is not known to be anybody.</summary>
public sealed class JoiningConversation(IConversation conversation, VisitJoining joining) : IConversation
{
    public async Task<Reply> HandleAsync(InboundMessage message, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(message);
        return await joining.TakeAsync(message.Text, null, message.Channel, message.Conversation, cancellationToken) is { } joined
            ? joined.Reply
            : await conversation.HandleAsync(message, cancellationToken);
    }
}
