using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;

namespace Assistant.Channels.Tests.Interleavings;

/// <summary>What must hold of a call whatever the order in which its three people spoke.</summary>
internal static class CrewChecks
{
    /// <summary>Each reading that was answered stands in the log once, by the one who said it, taken or in question.</summary>
    public static void EveryReadingIsOnRecordOnce(IEnumerable<CrewAnswer> answers, IReadOnlyCollection<VisitEvent> log)
    {
        foreach (var answer in answers)
        {
            Assert.Single(log.OfType<MessageHeard>(), m => m.MessageId == answer.Id && m.By == answer.Line.Person && m.Channel == answer.Channel);
            if (answer.Line.Value is { } value)
            {
                var taken = log.Where(e => e is FactTaken { Value: var read } && read == value).Select(e => (e.By, ((FactTaken)e).Fact)).Distinct().ToList();
                var count = log.Count(e => e is FactTaken { Value: var read } t && read == value && t.Fact == taken[0].Fact) + log.Count(e => e is FactQuestioned { Value: var read } && read == value);
                Assert.True(count == 1, $"\"{answer.Line.Text}\" by {answer.Line.Person} stands {count} times in the log, and was answered: {answer.Reply.Say.Full}");
                Assert.Contains(log, e => e is FactTaken or FactQuestioned && e.By == answer.Line.Person && ValueOf(e) == value);
            }
        }

        Assert.Equal(log.OfType<MessageHeard>().Count(), answers.Count());
    }

    /// <summary>The reply to a message is the one that is kept for it, posted once to where it was said, and speaks of what was said in it.</summary>
    public static async Task EachReplyGoesToWhoSpokeAsync(CrewCall call)
    {
        foreach (var answer in call.Answers.Where(a => a.Line.Value is not null))
        {
            var said = answer.Line.Value!.Value.ToString(CultureInfo.InvariantCulture);
            Assert.True(answer.Reply.Say.Full.Contains(said, StringComparison.Ordinal), $"\"{answer.Line.Text}\" by {answer.Line.Person} was answered: {answer.Reply.Say.Full}");
        }

        foreach (var (person, channel, conversation) in call.Places)
        {
            var own = call.Answers.Where(a => a.Line.Person == person && person != CrewScript.Office).Select(a => (conversation, a.Id, Words(a.Reply))).Order();
            Assert.Equal(own, (await call.PostedAsync(channel)).Select(p => (p.Conversation, p.MessageId, Words(p.Reply))).Order());
        }
    }

    private static string Words(Reply reply) => JsonSerializer.Serialize(reply);

    /// <summary>The fold of the whole log, the three programs' states, and a reader to whom the news came in another order and twice.</summary>
    public static void EveryReplicaIsTheSame(int seed, ImmutableArray<VisitEvent> log, IReadOnlyList<VisitState> programs)
    {
        var whole = StateText.Of(VisitState.Fold(log));
        Assert.All(programs, state => Assert.Equal(whole, StateText.Of(state)));
        Assert.Equal(whole, StateText.Of(ReadInAnyOrder(log, new(seed))));
    }

    /// <summary>Who confirmed a step with hazards was on site when they said it.</summary>
    public static void StepsAreConfirmedOnSite(IReadOnlyList<VisitEvent> log)
    {
        var (state, onSite) = (VisitState.Empty, new HashSet<string>());
        foreach (var happened in log)
        {
            state = state.Apply(happened);
            onSite.UnionWith(CrewScript.People.Where(p => state.People.ContainsKey(p) && VisitCrew.RoleOf(state, p) == VisitCrew.OnSite));
            if (happened is StopConfirmed { Stop: "hazards" })
            {
                Assert.Contains(happened.By, onSite);
            }
        }
    }

    // Each event comes once or twice, in any order, and is applied when its turn has come.
    private static VisitState ReadInAnyOrder(ImmutableArray<VisitEvent> log, Random chance)
    {
        var (state, waiting) = (VisitState.Empty, new Dictionary<int, VisitEvent>());
        foreach (var happened in log.Concat(log.Where(_ => chance.Next(4) == 0)).OrderBy(_ => chance.Next()).ToList())
        {
            waiting[happened.Number] = happened;
            while (waiting.Remove(state.Version + 1, out var next))
            {
                state = state.Apply(next);
            }
        }

        return state;
    }

    private static double? ValueOf(VisitEvent happened) => happened switch
    {
        FactTaken e => e.Value,
        FactQuestioned e => e.Value,
        _ => null,
    };
}
