using Assistant.Dialogue.Replies;

namespace Assistant.App.Web;

/// <summary>A visit as the page shows it.</summary>
/// <param name="Version">How many events the visit's log holds: a lower one is older.</param>
/// <param name="Place">Where the walk is, in words.</param>
/// <param name="Stop">The stop of the walk, by which an answer says what it answers.</param>
/// <param name="Refrigerant">Its designation, or null where it is not known yet.</param>
/// <param name="AtmospherePa">The barometric pressure at the site by its altitude, Pa absolute.</param>
/// <param name="Turns">What was said so far; only when the visit is opened on the screen.</param>
/// <param name="Derived">What follows from the readings by calculation.</param>
public sealed record VisitView(
    string Id,
    int Version,
    string Site,
    string? Unit,
    string? AssetId,
    string Units,
    string Place,
    string? Stop,
    string? Refrigerant,
    double AtmospherePa,
    bool Closed,
    ReplyView Reply,
    IReadOnlyList<object> Turns,
    IReadOnlyList<ReadingView> Readings,
    IReadOnlyList<DerivedView> Derived,
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
/// <param name="Channel">Where it was said: page, sms, a team's chat.</param>
/// <param name="Reply">Null where the answer is no longer kept.</param>
public sealed record TurnView(string Id, string By, string Channel, string Text, DateTimeOffset At, ReplyView? Reply);

/// <summary>A picture among what was said.</summary>
public sealed record PictureEntry(string Picture, string By, string Caption, DateTimeOffset At);

/// <summary>One fact as it is known now.</summary>
/// <param name="At">When it was taken; null where it comes from the record.</param>
/// <param name="Doubted">True where it was questioned and is kept out of the verdict.</param>
/// <param name="Says">What stands before its value when it is corrected; null where it can only be answered when asked.</param>
/// <param name="Units">The units it may be corrected in, the likeliest first; empty where it takes no number.</param>
/// <param name="Choices">What it may be corrected to, and how each is said.</param>
/// <param name="Others">What else was read for it on this visit, the newest first: kept, though it no longer counts.</param>
public sealed record ReadingView(
    string Fact,
    string Label,
    string Place,
    string Value,
    DateTimeOffset? At,
    string? By,
    bool Doubted,
    string? Says,
    IReadOnlyList<string> Units,
    IReadOnlyDictionary<string, string> Choices,
    IReadOnlyList<OtherReadingView> Others);

public sealed record OtherReadingView(string Value, DateTimeOffset At, string By);

/// <summary>A value by calculation.</summary>
/// <param name="From">The facts it rests on.</param>
public sealed record DerivedView(string Text, IReadOnlyList<string> From);

/// <summary>One fault as it stands, with its reasons.</summary>
public sealed record VerdictView(string Code, string Name, string Standing, IReadOnlyList<string> Because, IReadOnlyList<string> Against);
