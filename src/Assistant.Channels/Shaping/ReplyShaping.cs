using Assistant.Dialogue.Replies;
using Microsoft.Bot.Schema;

namespace Assistant.Channels.Shaping;

/// <summary>Shapes one reply for the channel it goes out by. A caution is never left out.</summary>
public static class ReplyShaping
{
    /// <summary>The channel id of the terminal, which reads plain lines and no cards.</summary>
    public const string TerminalChannel = "terminal";

    /// <summary>One thought a line, the question last with its choices in brackets.</summary>
    public static string TerminalText(Reply reply) => TerminalShape.TextOf(reply);

    internal static Activity For(string channel, Reply reply) =>
        channel == TerminalChannel ? TerminalShape.Of(reply) : ChatShape.Of(reply);
}
