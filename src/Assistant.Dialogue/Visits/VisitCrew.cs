using System.Collections.Immutable;

namespace Assistant.Dialogue.Visits;

/// <summary>One who is on a visit.</summary>
/// <param name="Role">on-site, helping or office.</param>
/// <param name="Channel">By what they were heard last, or null where they said nothing yet.</param>
/// <param name="HeardAt">When they were heard last, or null.</param>
/// <param name="IsWatching">True where they hear of verdicts only.</param>
public sealed record CrewMember(string Name, string Role, string? Channel, DateTimeOffset? HeardAt, bool IsWatching);

/// <summary>
/// Who is on a visit beside their roles: when each was heard, who watches, who left, and who came in whose place. Where nobody signs in,
/// whoever spoke is on the visit, and on site. Immutable.
/// </summary>
public sealed record VisitCrew
{
    public const string OnSite = "on-site";
    public const string Helping = "helping";
    public const string Office = "office";

    /// <summary>For so long "leave", said again, is meant after the last one on site was asked whom to hand over to.</summary>
    private static readonly TimeSpan LeaveStands = TimeSpan.FromMinutes(10);

    public static VisitCrew Empty { get; } = new();

    /// <summary>When each was heard last.</summary>
    public ImmutableDictionary<string, DateTimeOffset> Heard { get; init; } = ImmutableDictionary<string, DateTimeOffset>.Empty;

    /// <summary>Who watches, with the channel they asked by.</summary>
    public ImmutableDictionary<string, string> Watching { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>Who left, with the role they had.</summary>
    public ImmutableDictionary<string, string> Gone { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>By what the records know each who joined.</summary>
    internal ImmutableDictionary<string, string> Ids { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>Who came in whose place when the visit was handed over.</summary>
    private ImmutableDictionary<string, string> Successors { get; init; } = ImmutableDictionary<string, string>.Empty;

    private (string Name, DateTimeOffset At)? Queried { get; init; }

    /// <summary>Who is on the visit: on site first, then whoever was heard last.</summary>
    public static ImmutableArray<CrewMember> Of(VisitState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        var crew = state.Crew;
        return
        [
            .. state.People.Keys.Concat(crew.Heard.Keys).Distinct().Where(name => name.Length > 0 && !crew.Gone.ContainsKey(name))
                .Select(name => new CrewMember(
                    name, RoleOf(state, name), state.Channels.GetValueOrDefault(name), crew.Heard.TryGetValue(name, out var at) ? at : null, crew.Watching.ContainsKey(name)))
                .OrderByDescending(m => m.Role == OnSite).ThenByDescending(m => m.HeardAt ?? DateTimeOffset.MinValue).ThenBy(m => m.Name, StringComparer.Ordinal),
        ];
    }

    /// <summary>The role of a person, on the visit or not: on site for whom nobody gave another. Whom the visit was handed to is on site, whatever they joined as.</summary>
    public static string RoleOf(VisitState state, string person)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state.Crew.Gone.GetValueOrDefault(person)
            ?? (string.Equals(state.HandedTo, person, StringComparison.OrdinalIgnoreCase) ? OnSite : state.People.GetValueOrDefault(person, OnSite));
    }

    /// <summary>Who looks now after what that person was to be reminded of: they themselves, or who came in their place.</summary>
    public string Successor(string person) => Successors.GetValueOrDefault(person, person);

    /// <summary>True where the person was asked shortly before whom to hand over to.</summary>
    internal bool WasQueried(string person, DateTimeOffset now) => Queried is { } queried && queried.Name == person && now - queried.At < LeaveStands;

    internal VisitCrew Hear(string person, DateTimeOffset at) => this with { Heard = Heard.SetItem(person, at) };

    internal VisitCrew Join(string person, string id) => this with { Ids = Ids.SetItem(person, id), Gone = Gone.Remove(person) };

    internal VisitCrew Leave(string person, string role) =>
        this with { Gone = Gone.SetItem(person, role), Watching = Watching.Remove(person), Queried = null };

    internal VisitCrew Watch(string person, string channel) => this with { Watching = Watching.SetItem(person, channel) };

    internal VisitCrew EndWatch(string person) => this with { Watching = Watching.Remove(person) };

    internal VisitCrew Query(string person, DateTimeOffset at) => this with { Queried = (person, at) };

    internal VisitCrew HandOver(string from, string to) => this with
    {
        Successors = Successors.Where(s => s.Value == from && s.Key != to).Aggregate(Successors.Remove(to).SetItem(from, to), (all, before) => all.SetItem(before.Key, to)),
        Watching = Watching.Remove(to),
        Queried = null,
    };
}
