using Assistant.Dialogue.Replies;
using Microsoft.Bot.Schema;

namespace Assistant.Channels.Shaping;

/// <summary>A reply for the terminal: one thought a line, the question last, its choices in brackets. The reply itself travels along in-process.</summary>
internal static class TerminalShape
{
    public static Activity Of(Reply reply)
    {
        var activity = (Activity)Activity.CreateMessageActivity();
        activity.Text = TextOf(reply);
        activity.ChannelData = reply;
        return activity;
    }

    public static string TextOf(Reply reply) => string.Join('\n', Lines(reply));

    private static IEnumerable<string> Lines(Reply reply)
    {
        if (!reply.Say.IsEmpty)
        {
            yield return reply.Say.Full;
        }

        foreach (var because in reply.Because)
        {
            yield return because.Full;
        }

        foreach (var caution in reply.Cautions)
        {
            yield return caution.Text.Full;
        }

        if (reply.Ask is { IsEmpty: false } ask)
        {
            yield return reply.Choices.Length > 0 ? $"{ask.Full} [{string.Join(" / ", reply.Choices)}]" : ask.Full;
        }
    }
}
