using Assistant.Dialogue.Replies;
using Microsoft.Bot.Schema;

namespace Assistant.Channels.Shaping;

/// <summary>A reply for chat: text with the verdict first, a short form to be spoken, and the choices as buttons.</summary>
internal static class ChatShape
{
    public static Activity Of(Reply reply)
    {
        var activity = (Activity)Activity.CreateMessageActivity();
        activity.Text = string.Join("\n\n", Paragraphs(reply));
        activity.TextFormat = TextFormatTypes.Plain;
        activity.Speak = string.Join(" ", Spoken(reply));
        activity.InputHint = reply.Ask is null ? InputHints.AcceptingInput : InputHints.ExpectingInput;
        if (reply.Choices.Length > 0)
        {
            activity.SuggestedActions = new SuggestedActions
            {
                Actions = [.. reply.Choices.Select(choice => new CardAction(ActionTypes.ImBack, choice, value: choice))],
            };
            activity.Attachments = [ChoiceCard.Of(reply.Ask?.Full ?? reply.Say.Full, reply.Choices)];
        }

        return activity;
    }

    private static IEnumerable<string> Paragraphs(Reply reply)
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
            yield return ask.Full;
        }
    }

    private static IEnumerable<string> Spoken(Reply reply) =>
        new[] { reply.Say }.Concat(reply.Cautions.Select(c => c.Text)).Append(reply.Ask ?? Phrase.Empty)
            .Where(p => !p.IsEmpty).Select(p => p.Brief);
}
