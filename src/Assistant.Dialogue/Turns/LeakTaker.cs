using System.Globalization;
using System.Text.RegularExpressions;
using Assistant.Dialogue.Visits;

namespace Assistant.Dialogue.Turns;

/// <summary>Takes "leak at the flare nut", and says so where a leak was found at the same place before.</summary>
internal static partial class LeakTaker
{
    public static void Take(TurnDraft draft, string place)
    {
        var before = draft.State;
        draft.Emit(new LeakFound(place) { At = draft.At, By = draft.By });
        draft.Say("leak.found", ("place", place));
        if (before.Before?.Leaks.LastOrDefault(l => IsSame(l.Place, place)) is { } earlier)
        {
            draft.Say("leak.again", ("place", place), ("date", earlier.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)));
        }
        else if (before.Leaks.Exists(l => IsSame(l.Place, place)))
        {
            draft.Say("leak.again-today", ("place", place));
        }
    }

    /// <summary>True where two people mean the same place: case, articles and punctuation do not matter.</summary>
    public static bool IsSame(string one, string other) => Plain(one) == Plain(other);

    private static string Plain(string place) =>
        string.Join(' ', Word().Matches(place.ToUpperInvariant()).Select(m => m.Value).Where(w => w is not ("THE" or "A" or "AN")));

    [GeneratedRegex(@"[\p{L}\p{N}]+")]
    private static partial Regex Word();
}
