using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Questions;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Tests.Turns;
using Assistant.Dialogue.Tests.Understanding;
using Assistant.Dialogue.Turns;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Tests.Cautions;

/// <summary>A conversation with the real engine, of which only the cautions matter.</summary>
internal sealed class CautionScene
{
    private static readonly QuestionAnswerer Answerer = new(Conversation.Book);

    private readonly TurnEngine engine = Conversation.Engine(LexiconFiles.Understander.Understand, Assessor.Assess, Answerer.Answer);
    private DateTimeOffset now = Conversation.Start;
    private Turn turn;
    private int said;

    /// <param name="record">"refrigerant = R290", ...</param>
    public CautionScene(params IEnumerable<string> record) => turn = engine.Open(
        new("Invented Dairy", null, "us", record.Select(r => r.Split(" = ")).ToImmutableDictionary(p => p[0], p => p[1])) { At = now, By = "ada" });

    public string? Stop => turn.Reply.Walk?.Stop;

    /// <summary>The codes given in the last answer.</summary>
    public ImmutableArray<string> Given => [.. turn.Reply.Cautions.Select(c => c.Code)];

    public Reply Reply => turn.Reply;

    /// <summary>"text" by ada, "@ben text" by Ben, "+24h" for the clock, "...stop" for leaving everything out until the walk stands there.</summary>
    public CautionScene Say(params IEnumerable<string> lines)
    {
        foreach (var line in lines)
        {
            if (line.StartsWith("...", StringComparison.Ordinal))
            {
                Until(line[3..]);
            }
            else if (line[0] == '+')
            {
                now += TimeSpan.FromHours(int.Parse(line[1..^1], CultureInfo.InvariantCulture));
            }
            else
            {
                var (by, text) = line[0] == '@' ? (line[1..line.IndexOf(' ', StringComparison.Ordinal)], line[(line.IndexOf(' ', StringComparison.Ordinal) + 1)..]) : ("ada", line);
                Take(by, text);
            }
        }

        return this;
    }

    private void Until(string stop)
    {
        for (var steps = 0; steps < 60 && Stop != stop; steps++)
        {
            // What may not be left out is confirmed.
            var before = Stop;
            Take("ada", "skip");
            if (Stop == before)
            {
                Take("ada", "ok");
            }
        }

        Assert.Equal(stop, Stop);
    }

    private void Take(string by, string text)
    {
        now += TimeSpan.FromMinutes(1);
        turn = engine.Take(turn.After, new((++said).ToString(CultureInfo.InvariantCulture), "chat", "c", by, now, text));
    }
}
