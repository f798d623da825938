using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;

namespace Assistant.Channels;

/// <summary>What every channel talks to: one message in, one reply out, stored before it is given.</summary>
public interface IConversation
{
    /// <summary>Takes a message. A message id seen before gives the same reply again and changes nothing.</summary>
    Task<Reply> HandleAsync(InboundMessage message, CancellationToken cancellationToken);
}
