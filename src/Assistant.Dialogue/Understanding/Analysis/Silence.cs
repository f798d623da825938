using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Decides whether a message that gave no value still was an answer, and what to ask back; null where it said nothing.</summary>
internal static class Silence
{
    private const int LongestAnswer = 14;

    public static Clarify? Open(List<Item> items, Fact? expected, Observed observed)
    {
        if (items.Exists(i => i.Has(Cue.SignOpen)))
        {
            return Clarify.Sign;
        }

        if (items.Count > LongestAnswer || !IsOfTheTrade(items))
        {
            return null;
        }

        if (observed.UnnamedValue)
        {
            return Clarify.Fact;
        }

        var vague = items.Exists(i => i.Has(Cue.Vague) || i.Has(Cue.Decade));
        var named = items.Exists(i => i.NamesQuantity);
        var observable = items.Exists(i => i.Values.Count > 0 || i.Counts.Any(c => c is CountWord.Going or CountWord.Stopped) || i.YesNo is not null);
        if (expected is null)
        {
            return named && vague ? Clarify.Value : observable || vague ? Clarify.Fact : null;
        }

        // Words that fit no number are an answer only where they are all that is said.
        var bare = observable && (!expected.IsQuantity || items.Count <= 2 || items.Exists(i => i.YesNo is not null && items.Count <= 4));
        return vague || bare || items.Exists(i => i.Has(Cue.Bound) && i.End - i.Start > 0 && items.Count <= 2) || items.Exists(i => i.Facts.Any(f => f.Fact == expected))
            ? Clarify.Value
            : null;
    }

    // Small talk is full of strangers; an answer is not.
    private static bool IsOfTheTrade(List<Item> items)
    {
        var strangers = items.Count(i => i.Mark is ItemMark.Stranger);
        return strangers == 0 || strangers * 4 <= items.Count;
    }
}
