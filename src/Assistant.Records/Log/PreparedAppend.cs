using System.Text.Json;
using Assistant.Records.Chain;

namespace Assistant.Records.Log;

/// <summary>An append with its texts as they are stored.</summary>
/// <param name="Events">In the order of the append's own.</param>
/// <param name="Reply">The answer's reply as JSON; null where there is none.</param>
internal sealed record PreparedAppend(Append Append, IReadOnlyList<SealedEvent> Events, string? Reply)
{
    public static PreparedAppend Of(Append append) => new(
        append,
        [.. append.Events.Select(e => SealedEvent.Of(EventJson.Write(e)))],
        append.Answer is { } answer ? JsonSerializer.Serialize(answer.Reply, EventJson.Options) : null);
}
