using System.Text.Json;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.People;

namespace Assistant.Channels.Tests.Interleavings;

/// <summary>What one line was answered.</summary>
internal sealed record CrewAnswer(CrewLine Line, string Id, string Channel, string Conversation, Reply Reply);

/// <summary>
/// One call of three people, each by a program of their own on the same records: on site by text, helping in a room, the office on the
/// page. Texts and the room's words are taken as their channels take them: by what was in view when they were sent, answered through the outbox.
/// </summary>
internal sealed class CrewCall : IDisposable
{
    private static readonly DateTimeOffset Morning = new(2026, 7, 14, 9, 0, 0, TimeSpan.Zero);

    private readonly int seed;
    private readonly VisitPeople joining;
    private readonly Dictionary<string, Node> nodes = [];
    private readonly List<CrewAnswer> answers = [];
    private readonly List<OutboxItem> delivered = [];
    private DateTimeOffset now = Morning;
    private int said;
    private int repeats;

    /// <param name="run">Tells two runs of one seed apart.</param>
    public CrewCall(int seed, string run, IReadOnlyList<EventLog> logs, VisitPeople joining)
    {
        (this.seed, this.joining) = (seed, joining);
        foreach (var (person, channel, log) in CrewScript.People.Zip(["sms", "xmpp", "page"], logs))
        {
            var engine = new InterruptedEngine();
            nodes.Add(person, new($"{channel}-{run}{seed}", $"{person}@{run}{seed}", log, engine, new(log, engine, new() { NewVisitId = () => $"visit-{run}{seed}" })));
        }
    }

    public IReadOnlyList<CrewAnswer> Answers => answers;

    /// <summary>How many turns were made again, because another's was stored first.</summary>
    public int MadeAgain => nodes.Values.Sum(n => n.Engine.Turns) - answers.Count - repeats;

    public string VisitId { get; private set; } = "";

    public EventLog Log => nodes[CrewScript.Office].Log;

    public async Task RunAsync()
    {
        await OpenAsync();
        foreach (var line in CrewScript.Of(seed))
        {
            await SayAsync(line);
        }
    }

    /// <summary>The visit as each of the three programs has it: kept in memory and brought up to date as the others wrote.</summary>
    public async Task<VisitState[]> StatesAsync()
    {
        var states = new List<VisitState>();
        foreach (var node in nodes.Values)
        {
            states.Add(await node.Conversations.StateOfAsync(VisitId));
        }

        return [.. states];
    }

    /// <summary>What the outbox holds for a channel: to whom, in answer to what.</summary>
    public async Task<IEnumerable<OutboxItem>> PostedAsync(string channel) =>
        delivered.Where(d => d.Channel == channel).Concat(await new ReplyOutbox(Log.Database).DueAsync(channel, DateTimeOffset.MaxValue, 1000));

    public IEnumerable<(string Person, string Channel, string Conversation)> Places => nodes.Select(n => (n.Key, n.Value.Channel, n.Value.Conversation));

    public void Dispose()
    {
        foreach (var node in nodes.Values)
        {
            node.Conversations.Dispose();
        }
    }

    private async Task OpenAsync()
    {
        var office = nodes[CrewScript.Office];
        VisitId = (await office.Conversations.OpenVisitAsync(new(office.Channel, office.Conversation, "Invented Dairy", null, Trade.Quantities.UnitSystem.Us, CrewScript.Office, now))).VisitId;
        var version = (await Log.ReadAsync(VisitId)).Length;
        var roles = CrewScript.People.Zip(["on-site", "helping", "office"], (person, role) => new PersonJoined($"{person}-{seed}", role) { At = now, By = person });
        Assert.IsType<Appended>(await Log.AppendAsync(new(VisitId, version, [.. roles])));
        foreach (var node in nodes.Values)
        {
            await joining.JoinAsync(VisitId, null, node.Channel, node.Conversation);
        }
    }

    private async Task SayAsync(CrewLine line)
    {
        now += line.After;
        var node = nodes[line.Person];
        var sent = now - line.Late;
        var message = new InboundMessage($"{seed}-{++said}", node.Channel, node.Conversation, line.Person, sent < Morning ? Morning : sent, line.Text);
        if (line.Meanwhile is { } meanwhile)
        {
            // The other's message is stored while this one's answer is made up: the answer is made again on what is there then.
            node.Engine.During(() => Task.Run(() => SayAsync(meanwhile)).Wait());
        }

        var reply = await HandleAsync(node, message);
        answers.Add(new(line, message.MessageId, node.Channel, node.Conversation, reply));
        if (line.IsBroughtTwice)
        {
            repeats++;
            Assert.Equal(JsonSerializer.Serialize(reply), JsonSerializer.Serialize(await HandleAsync(node, message)));
        }

        if (line.IsDelivered && line.Person != CrewScript.Office)
        {
            await DeliverAsync(node);
        }
    }

    private static async Task<Reply> HandleAsync(Node node, InboundMessage message)
    {
        if (message.Person == CrewScript.Office)
        {
            return await node.Conversations.HandleAsync(message);
        }

        var seen = await new ReplyOutbox(node.Log.Database).SeenAsync(node.Channel, node.Conversation, message.At);
        return await node.Conversations.HandleLateAsync(message, seen);
    }

    private async Task DeliverAsync(Node node)
    {
        var outbox = new ReplyOutbox(node.Log.Database);
        foreach (var item in await outbox.DueAsync(node.Channel, DateTimeOffset.MaxValue))
        {
            await outbox.BeginAsync(item.Id, now);
            await outbox.HandedOverAsync(item.Id, now);
            delivered.Add(item);
        }
    }

    private sealed record Node(string Channel, string Conversation, EventLog Log, InterruptedEngine Engine, ConversationService Conversations);
}
