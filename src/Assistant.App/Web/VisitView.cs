using Assistant.Dialogue.Replies;

namespace Assistant.App.Web;

/// <summary>A visit as the page shows it.</summary>
/// <param name="Place">Where the walk is, in words.</param>
/// <param name="Turns">What was said so far; only when the visit is opened on the screen.</param>
public sealed record VisitView(
    string Id,
    string Site,
    string Units,
    string Place,
    ReplyView Reply,
    IReadOnlyList<TurnView> Turns,
    IReadOnlyList<ReadingView> Readings,
    IReadOnlyList<VerdictView> Verdicts);

/// <summary>A reply in its full form.</summary>
/// <param name="Asked">The fact now asked for, or null.</param>
/// <param name="Units">The units it may be answered in, the likeliest first.</param>
public sealed record ReplyView(
    string Say,
    IReadOnlyList<string> Because,
    IReadOnlyList<CautionView> Cautions,
    string? Ask,
    IReadOnlyList<string> Choices,
    string? Asked,
    IReadOnlyList<string> Units)
{
    public static ReplyView Of(Reply reply) => new(
        reply.Say.Full,
        [.. reply.Because.Select(b => b.Full)],
        [.. reply.Cautions.Select(c => new CautionView(c.Code, c.Text.Full))],
        reply.Ask is { IsEmpty: false } ask ? ask.Full : null,
        reply.Choices,
        reply.AskedFact,
        reply.Units);
}

public sealed record CautionView(string Code, string Text);

/// <summary>One thing said and its answer.</summary>
/// <param name="Reply">Null where the answer is no longer kept.</param>
public sealed record TurnView(string Id, string By, string Text, DateTimeOffset At, ReplyView? Reply);

/// <summary>One fact as it is known now.</summary>
/// <param name="At">When it was taken; null where it comes from the record.</param>
/// <param name="Doubted">True where it was questioned and is kept out of the verdict.</param>
public sealed record ReadingView(string Fact, string Label, string Place, string Value, DateTimeOffset? At, bool Doubted);

/// <summary>One fault as it stands, with its reasons.</summary>
public sealed record VerdictView(string Code, string Name, string Standing, IReadOnlyList<string> Because, IReadOnlyList<string> Against);
