namespace Assistant.Channels.Xmpp;

/// <summary>What is done with what comes in. Brought again after a restart, the same words are answered once.</summary>
public interface IXmppTalk
{
    /// <summary>Words in a room, each once and in their order.</summary>
    Task HearAsync(RoomWords words, CancellationToken cancellation);

    /// <summary>The room has sent back what we posted: who speaks after it has read it.</summary>
    Task PostedAsync(Jid room, string id, CancellationToken cancellation);

    /// <summary>Words that were written to us directly.</summary>
    Task HearAsync(DirectWords words, CancellationToken cancellation);
}
