using System.Text.RegularExpressions;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>The commands of the people on a visit: who is on it, who only watches, who leaves, and to whom it is handed over.</summary>
internal sealed partial class CrewCommands(PhraseBook book, WalkStand stand)
{
    /// <summary>Nearer than this is "just now".</summary>
    private static readonly TimeSpan JustNow = TimeSpan.FromMinutes(2);

    private readonly HandoverTeller handover = new(book);
    private readonly StatusTeller status = new(book);

    /// <summary>Who left and says something is on the visit again, as they were.</summary>
    public static void Return(TurnDraft draft)
    {
        if (draft.State.Crew.Gone.TryGetValue(draft.By, out var role))
        {
            draft.Emit(new PersonJoined(draft.State.Crew.Ids.GetValueOrDefault(draft.By, ""), role) { At = draft.At, By = draft.By });
            draft.Say("told.back");
        }
    }

    public void Who(TurnDraft draft) => draft.Say(List("crew.who", draft.State, VisitCrew.Of(draft.State), draft.At));

    /// <summary>Tells how the visit stands, and from then on only what is proved.</summary>
    public void Watch(TurnDraft draft)
    {
        if (OthersOnSite(draft).Count == 0 && VisitCrew.RoleOf(draft.State, draft.By) == VisitCrew.OnSite)
        {
            draft.Say("crew.watch-alone");
            return;
        }

        if (!draft.State.Crew.Watching.ContainsKey(draft.By))
        {
            draft.Emit(new WatchBegan(draft.State.Channels.GetValueOrDefault(draft.By, "")) { At = draft.At, By = draft.By });
        }

        draft.Say("crew.watching");
        status.Status(draft, stand.Leader(draft.State), stand.Titles(draft.State));
    }

    public static void EndWatch(TurnDraft draft)
    {
        if (draft.State.Crew.Watching.ContainsKey(draft.By))
        {
            draft.Emit(new WatchEnded { At = draft.At, By = draft.By });
            draft.Say("crew.watch-ended");
        }
        else
        {
            draft.Say("crew.watch-none");
        }
    }

    /// <summary>The last one on site is first asked whom to hand over to, where there is somebody. Nothing of the visit is lost.</summary>
    public static void Leave(TurnDraft draft)
    {
        var state = draft.State;
        var isLast = VisitCrew.RoleOf(state, draft.By) == VisitCrew.OnSite && OthersOnSite(draft).Count == 0;
        var others = Others(draft);
        if (isLast && others.Count > 0 && !state.Crew.WasQueried(draft.By, draft.At))
        {
            draft.Emit(new LeaveQueried { At = draft.At, By = draft.By });
            draft.Say("crew.leave-last", ("people", Names(others)), ("person", others[0].Name));
            return;
        }

        if (state.CheckIn is { } checkIn && state.Crew.Successor(checkIn.By) == draft.By)
        {
            Reminders.End(draft);
            draft.Say("check-in.off");
        }

        draft.Emit(new PersonLeft(state.Crew.Ids.GetValueOrDefault(draft.By, "")) { At = draft.At, By = draft.By });
        draft.Say(isLast ? "crew.left-nobody" : "crew.left");
    }

    /// <summary>Hands the visit over: the one named is on site from then on, with what the one before was to be reminded of.</summary>
    public void HandOver(TurnDraft draft, string text)
    {
        var named = Name().Match(text) is { Success: true } match ? match.Groups["name"].Value.Trim() : "";
        var others = Others(draft);
        if (Find(VisitCrew.Of(draft.State), named) is { } next)
        {
            Move(draft, next);
        }
        else if (named.Length > 0 && !Somebody().IsMatch(named) && others.Count > 0)
        {
            draft.Say(List("crew.not-here", draft.State, VisitCrew.Of(draft.State), draft.At, ("person", named)));
            return;
        }
        else
        {
            var to = named.Length == 0 || Somebody().IsMatch(named) ? book.Say("command.handover-somebody", draft.State.Units).Full : named.Split(' ')[0];
            draft.Emit(new HandedOver(to) { At = draft.At, By = draft.By });
            draft.Say("command.handed-over", ("person", to));
        }

        draft.Say(handover.Tell(draft.State, stand.Leader(draft.State)));
    }

    private static void Move(TurnDraft draft, CrewMember next)
    {
        var state = draft.State;
        var ids = state.Crew.Ids;
        var from = VisitCrew.RoleOf(state, draft.By) == VisitCrew.OnSite ? draft.By
            : VisitCrew.Of(state).FirstOrDefault(m => m.Role == VisitCrew.OnSite && m.Name != next.Name)?.Name ?? next.Name;
        draft.Emit(new HandedOver(next.Name) { At = draft.At, By = draft.By, From = from, FromId = ids.GetValueOrDefault(from), ToId = ids.GetValueOrDefault(next.Name) });
        draft.Say("command.handed-over", ("person", next.Name));
        draft.Say(from == next.Name ? "crew.on-site-already" : "crew.on-site-now", ("person", next.Name), ("before", from));
        if (draft.State.CheckIn is { } open && open.By == from && from != next.Name)
        {
            Reminders.Expect(draft, open.Every, open.Contact, open.Number, next.Name);
        }
    }

    private static List<CrewMember> Others(TurnDraft draft) => [.. VisitCrew.Of(draft.State).Where(m => m.Name != draft.By)];

    private static List<CrewMember> OthersOnSite(TurnDraft draft) => Others(draft).FindAll(m => m.Role == VisitCrew.OnSite && !m.IsWatching);

    // By the whole name, else by a part of it that only one bears.
    private static CrewMember? Find(IReadOnlyCollection<CrewMember> crew, string named)
    {
        var whole = crew.FirstOrDefault(m => string.Equals(m.Name, named, StringComparison.OrdinalIgnoreCase));
        var bearing = crew.Where(m => m.Name.Split(' ').Contains(named, StringComparer.OrdinalIgnoreCase)).ToList();
        return whole ?? (bearing.Count == 1 ? bearing[0] : null);
    }

    private Phrase List(string key, VisitState state, IEnumerable<CrewMember> crew, DateTimeOffset now, params ReadOnlySpan<ReasonPart> also)
    {
        var members = crew.Select(m => Say(m, state, now)).ToList();
        var (full, brief) = (string.Join("; ", members.Select(m => m.Full)), string.Join("; ", members.Select(m => m.Brief)));
        return new(book.Say(key, state.Units, [.. also, ("people", full)]).Full, book.Say(key, state.Units, [.. also, ("people", brief)]).Brief);
    }

    private Phrase Say(CrewMember member, VisitState state, DateTimeOffset now)
    {
        var role = book.Word(member.IsWatching ? "role-watching" : "role-" + member.Role);
        if (member is not { Channel: { } channel, HeardAt: { } at })
        {
            return book.Say("crew.member-silent", state.Units, ("person", member.Name), ("role", role));
        }

        var by = book.Has("word.channel-" + channel) ? book.Word("channel-" + channel) : book.Word("channel-other");
        var ago = now - at;
        return ago < JustNow
            ? book.Say("crew.member-now", state.Units, ("person", member.Name), ("role", role), ("channel", by))
            : book.Say("crew.member", state.Units, ("person", member.Name), ("role", role), ("channel", by), ("ago", new Amount(Math.Floor(ago.TotalMinutes) * 60, Dimension.Time)));
    }

    private static string Names(IEnumerable<CrewMember> crew) => string.Join(", ", crew.Select(m => m.Name));

    [GeneratedRegex(@"\b(?:to|for)\s+(?<name>[A-Za-z][\w'-]*(?:\s+(?!(?:please|now|thanks|thank)\b)[\w'-]+){0,2})", RegexOptions.IgnoreCase)]
    private static partial Regex Name();

    // "the next guy", "someone else", "tomorrow": nobody by name.
    [GeneratedRegex(@"^(the|a|an|another|next|some(one|body)|any(one|body)|whoever|tomorrow|me)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Somebody();
}
