namespace Assistant.Dialogue.Visits;

/// <summary>One message as a channel hands it over.</summary>
/// <param name="MessageId">Unique to the message: the same id again gets the same reply and changes nothing.</param>
/// <param name="Conversation">The channel's own name for the conversation, by which its visit is found.</param>
/// <param name="At">When it was said.</param>
public sealed record InboundMessage(
    string MessageId,
    string Channel,
    string Conversation,
    string Person,
    DateTimeOffset At,
    string Text);
