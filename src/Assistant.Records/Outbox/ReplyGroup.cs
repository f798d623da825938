using Assistant.Dialogue.Replies;

namespace Assistant.Records.Outbox;

/// <summary>Several replies for one room as one: all that was said in its order, every caution once, and only the last question.</summary>
public static class ReplyGroup
{
    /// <param name="replies">At least one, oldest first.</param>
    public static Reply Of(IReadOnlyList<Reply> replies)
    {
        ArgumentNullException.ThrowIfNull(replies);
        if (replies is [var only])
        {
            return only;
        }

        var asking = replies.LastOrDefault(r => r.Ask is { IsEmpty: false }) ?? replies[^1];
        var said = replies.Select(r => r.Say).Where(s => !s.IsEmpty).Distinct().ToList();
        return asking with
        {
            Say = new(string.Join('\n', said.Select(s => s.Full)), string.Join(' ', said.Select(s => s.Brief)))
            {
                Spoken = said.Exists(s => s.Spoken is not null) ? string.Join(' ', said.Select(s => s.Aloud)) : null,
            },
            Because = [.. replies.SelectMany(r => r.Because).Distinct()],
            Cautions = [.. replies.SelectMany(r => r.Cautions).DistinctBy(c => c.Code)],
            Verdicts = replies[^1].Verdicts,
            Parts = [],
            IsWhole = replies.Any(r => r.IsWhole),
        };
    }
}
