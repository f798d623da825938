using Assistant.Dialogue.Visits;

namespace Assistant.Records.Conversations;

/// <summary>
/// Names are told apart by their letters, not by capitals or blanks: "robin" on one phone is the Robin who spoke before, and is not asked
/// which of two people's readings counts.
/// </summary>
internal static class OneSpelling
{
    /// <summary>The message under the name as the visit first heard it.</summary>
    public static InboundMessage Of(VisitState state, InboundMessage message)
    {
        if (state.Crew.Heard.ContainsKey(message.Person))
        {
            return message;
        }

        var known = state.Crew.Heard.Keys.Concat(state.People.Keys).FirstOrDefault(name => AreOne(name, message.Person));
        return known is null ? message : message with { Person = known };
    }

    public static bool AreOne(string name, string other) => string.Equals(Plain(name), Plain(other), StringComparison.OrdinalIgnoreCase);

    private static string Plain(string name) => string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
