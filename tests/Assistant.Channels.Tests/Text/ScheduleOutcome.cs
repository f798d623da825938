namespace Assistant.Channels.Tests.Text;

/// <summary>What a schedule put the call through.</summary>
/// <param name="Overtaken">Messages that a later one of their burst overtook.</param>
internal sealed record Trouble(int Kills, int Repeats, int Overtaken, int Refusals);

/// <param name="Lost">Messages without a reply.</param>
/// <param name="Doubled">Messages with more than one.</param>
internal sealed record ScheduleOutcome(string Outcome, IReadOnlyList<string> Lost, IReadOnlyList<string> Doubled, Trouble Trouble);
