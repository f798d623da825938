using System.Collections.Immutable;
using Assistant.Dialogue.Understanding.Lexicons;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Finds whether a message puts right what was said before it: by the words it begins with, and by the number it denies.</summary>
internal static class Corrections
{
    /// <summary>Before the numbers that the message itself takes back are out.</summary>
    public static Correcting? In(List<Item> items)
    {
        var first = items.FindIndex(i => !i.IsPlain && !i.IsBreak);
        if (first < 0)
        {
            return null;
        }

        var isPlain = Enumerable.Range(0, first + 1).Any(i => items[i].Has(Cue.Mistaken))
            || (items[first].YesNo is false && items.Skip(first + 1).FirstOrDefault(i => !i.IsPlain && !i.IsBreak) is { } next && next.Has(Cue.Mistaken));
        var denied = Denied(items);
        // "no" by itself answers what is asked, or misses it; it puts nothing right.
        var saysMore = items.Skip(first + 1).Any(i => !i.IsPlain && !i.IsBreak);
        return isPlain || denied.Length > 0 || (saysMore && (items[first].YesNo is false || items[first].Has(Cue.Correction))) ? new(isPlain, denied) : null;
    }

    // "48 not 84"
    private static ImmutableArray<double> Denied(List<Item> items)
    {
        var denied = ImmutableArray.CreateBuilder<double>();
        for (var i = 0; i < items.Count; i++)
        {
            if (items[i].Number is { Open: null } number && Superseding.IsDenied(items, i))
            {
                denied.Add(number.Value);
            }
        }

        return denied.ToImmutable();
    }
}
