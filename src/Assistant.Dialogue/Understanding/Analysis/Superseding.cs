using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>
/// Takes out the numbers that the message itself takes back: "117, I mean 109", "not 117, 109", "it was 10, now it's 14". The last
/// value stands in the place of the first, so that the first one's name holds for it.
/// </summary>
internal static class Superseding
{
    /// <returns>Whether a number was denied and none was given instead.</returns>
    public static bool Apply(List<Item> items, Fact? expected)
    {
        var denied = false;
        for (var i = 0; i < items.Count; i++)
        {
            if (items[i].Number is { } number && IsDenied(items, i))
            {
                denied |= !NumberRemains(items, i);
                Remove(items, i);
                i--;
            }
            else if (items[i].Number is not null && IsPastOfEarlier(items, i))
            {
                Remove(items, i);
            }
            else if (items[i].Number is not null && EarlierOf(items, i) is { } earlier)
            {
                Replace(items, earlier, i, expected);
                i = earlier;
            }
        }

        return denied;
    }

    // "not 117", "it's not at 117".
    internal static bool IsDenied(List<Item> items, int at)
    {
        var i = at - 1;
        while (i >= 0 && items[i].IsPlain && at - i <= 2)
        {
            i--;
        }

        // "no, 12" takes back what was said before and denies nothing.
        return i >= 0 && items[i].Has(Cue.Not) && !items[i].Has(Cue.Correction);
    }

    private static bool NumberRemains(List<Item> items, int but)
    {
        for (var i = 0; i < items.Count; i++)
        {
            if (i != but && items[i].Number is not null)
            {
                return true;
            }
        }

        return false;
    }

    // The number that this one corrects: a correction stands between them and no other fact is named with this one.
    private static int? EarlierOf(List<Item> items, int at)
    {
        var corrected = false;
        for (var i = at - 1; i >= 0; i--)
        {
            if (items[i].Number is not null)
            {
                return corrected || WasThenNow(items, i, at) ? i : null;
            }

            if (items[i].NamesQuantity)
            {
                return null;
            }

            corrected |= items[i].Has(Cue.Correction);
        }

        return null;
    }

    private static bool WasThenNow(List<Item> items, int earlier, int later)
    {
        var was = false;
        for (var i = earlier - 1; i >= 0 && i >= earlier - 3; i--)
        {
            was |= items[i].Has(Cue.Past);
        }

        var now = false;
        for (var i = earlier + 1; i < later; i++)
        {
            now |= items[i].Has(Cue.Now);
        }

        return was && now;
    }

    // "18, was 20 before": what stood there earlier, said behind what stands there now.
    private static bool IsPastOfEarlier(List<Item> items, int at)
    {
        if (at == 0 || !items[at - 1].Has(Cue.Past) || items.Skip(at + 1).Any(i => i.Number is not null || i.Has(Cue.Now)))
        {
            return false;
        }

        for (var i = at - 1; i >= 0; i--)
        {
            if (items[i].Number is not null)
            {
                return true;
            }

            if (items[i].NamesQuantity || items[i].Has(Cue.Correction))
            {
                return false;
            }
        }

        return false;
    }

    private static void Replace(List<Item> items, int earlier, int later, Fact? expected)
    {
        var (was, now) = (items[earlier].Number!, items[later].Number!);
        var units = now.Units.Count > 0 ? now.Units : was.Units;
        var open = IsUnclear(items, earlier, expected) ? Clarify.Value : now.Open;
        items[earlier] = items[earlier] with { Number = now with { Units = units, Open = open } };
        items.RemoveRange(earlier + 1, later - earlier);
    }

    // With several facts told, a bare correction belongs to the last one only if that was asked.
    private static bool IsUnclear(List<Item> items, int earlier, Fact? expected)
    {
        var names = new List<Fact>();
        for (var i = 0; i <= earlier; i++)
        {
            foreach (var name in items[i].Facts)
            {
                if (name.Fact.IsQuantity && !names.Contains(name.Fact))
                {
                    names.Add(name.Fact);
                }
            }
        }

        return names.Count > 1 && names[^1] != expected;
    }

    private static void Remove(List<Item> items, int at) => items[at] = items[at] with { Number = null, Mark = ItemMark.Taken };
}
