using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Tests.Turns;

/// <summary>A conversation with the engine on the real walk and phrases; its neighbours are whatever a test hands in.</summary>
internal sealed class Conversation
{
    public static readonly DateTimeOffset Start = new(2026, 7, 14, 9, 0, 0, TimeSpan.FromHours(2));

    private readonly TurnEngine engine;
    private DateTimeOffset now = Start;

    public Conversation(Understand? understand = null, Assess? assess = null, AnswerQuestion? answer = null, params (string Fact, string Text)[] known)
    {
        engine = Engine(understand ?? FakeUnderstanding.Understand, assess ?? (_ => Nothing), answer ?? ((_, _) => null));
        var opened = new VisitOpened("Upper Dairy", null, "us", known.ToImmutableDictionary(k => k.Fact, k => k.Text)) { At = now, By = "ada" };
        Keep(engine.Open(opened));
    }

    public static PhraseBook Book { get; } = PhraseBook.Load(RepositoryFiles.ReadAll("dialogs/phrases", "*.yaml"));

    public static WalkLibrary Walks { get; } = WalkLibrary.Load(RepositoryFiles.ReadAll("dialogs/walks", "*.yaml"), Book);

    public static WalkDefinition Walk => Walks.Opening;

    public static ShortWords Words { get; } = ShortWords.Load(RepositoryFiles.Read("dialogs/words/en.yaml"));

    /// <summary>What rules say that see nothing.</summary>
    public static Assessment Nothing { get; } = Judging();

    public VisitState State { get; private set; } = VisitState.Empty;

    public Reply Reply { get; private set; } = null!;

    public List<VisitEvent> Log { get; } = [];

    public string? Stop => Reply.Walk?.Stop;

    public static TurnEngine Engine(Understand understand, Assess assess, AnswerQuestion answer) => new(Book, Words, Walks, understand, assess, answer);

    public static Assessment Judging(params (FaultCode Code, Standing Standing)[] findings) => new(
        findings.Length == 0
            ? [new(FaultCode.NotEnoughEvidence, Standing.Possible, [], [], "")]
            : [.. findings.Select(f => new Finding(f.Code, f.Standing, [new("taken.confirmed"), new("found.pumping")], [], "common practice"))],
        new(null, null, null, false, null, null, null, null, null),
        [],
        null,
        []);

    public Reply Say(string text, string by = "ada")
    {
        now += TimeSpan.FromMinutes(1);
        Keep(engine.Take(State, new((Log.Count + 1).ToString(CultureInfo.InvariantCulture), "chat", "c", by, now, text)));
        return Reply;
    }

    public Reply SayAll(params string[] texts)
    {
        foreach (var text in texts)
        {
            Say(text);
        }

        return Reply;
    }

    private void Keep(Turn turn)
    {
        Log.AddRange(turn.Events);
        (State, Reply) = (turn.After, turn.Reply);
    }
}
