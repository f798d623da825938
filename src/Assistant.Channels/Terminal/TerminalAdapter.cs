using Assistant.Channels.Shaping;
using Assistant.Dialogue.Replies;
using Microsoft.Bot.Builder;
using Microsoft.Bot.Schema;

namespace Assistant.Channels.Terminal;

/// <summary>What the terminal shows for one turn: its lines, and the reply they were shaped from.</summary>
public sealed record TerminalTurn(string Text, Reply? Reply);

/// <summary>Brings typed lines to the same handler that every other channel uses, and hands back what it says.</summary>
public sealed class TerminalAdapter(IBot bot) : BotAdapter
{
    /// <summary>Says one line. Sequential: one terminal, one speaker at a time.</summary>
    /// <param name="messageId">Unique to the line, so that a line said twice counts once.</param>
    public async Task<TerminalTurn> SayAsync(string messageId, string conversation, string person, string text, CancellationToken cancellationToken)
    {
        var sent = new List<Activity>();
        var activity = new Activity
        {
            Type = ActivityTypes.Message,
            Id = messageId,
            ChannelId = ReplyShaping.TerminalChannel,
            Conversation = new ConversationAccount(id: conversation),
            From = new ChannelAccount(person, person),
            Recipient = new ChannelAccount("coldwalk", "Coldwalk"),
            Text = text,
        };
        using var context = new TurnContext(this, activity);
        context.TurnState.Add(sent);
        await RunPipelineAsync(context, bot.OnTurnAsync, cancellationToken);
        return new(string.Join('\n', sent.Select(a => a.Text)), sent.Select(a => a.ChannelData).OfType<Reply>().LastOrDefault());
    }

    public override Task<ResourceResponse[]> SendActivitiesAsync(ITurnContext turnContext, Activity[] activities, CancellationToken cancellationToken)
    {
        var sent = turnContext.TurnState.Get<List<Activity>>();
        sent.AddRange(activities.Where(a => a.Type == ActivityTypes.Message));
        return Task.FromResult(activities.Select(a => new ResourceResponse(a.Id ?? "")).ToArray());
    }

    /// <exception cref="NotSupportedException">Always: what a terminal has printed stays printed.</exception>
    public override Task<ResourceResponse> UpdateActivityAsync(ITurnContext turnContext, Activity activity, CancellationToken cancellationToken) =>
        throw new NotSupportedException("A line in the terminal cannot be changed afterwards.");

    /// <exception cref="NotSupportedException">Always: what a terminal has printed stays printed.</exception>
    public override Task DeleteActivityAsync(ITurnContext turnContext, ConversationReference reference, CancellationToken cancellationToken) =>
        throw new NotSupportedException("A line in the terminal cannot be taken back.");
}
