using Assistant.Dialogue.Understanding.Lexicons;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>What a clause says about things that are told by counting: "one fan is dead" is some, "both running" is all.</summary>
internal static class CountedReader
{
    /// <summary>all, some or none; null where the clause does not say.</summary>
    public static string? Read(List<Item> items, int from, int to)
    {
        CountWord? extent = null;
        bool? going = null;
        var (anyGoing, anyStopped) = (false, false);
        var denied = false;
        for (var i = from; i < to; i++)
        {
            var item = items[i];
            if (item.Has(Cue.Not) && item.Counts.Count == 0)
            {
                denied = true;
                continue;
            }

            foreach (var word in item.Counts)
            {
                switch (word)
                {
                    case CountWord.All when denied:
                        (extent, denied) = (CountWord.Some, false);
                        break;
                    case CountWord.None when IsRetort(items, i, to):
                        break;
                    case CountWord.All or CountWord.Some or CountWord.None:
                        extent ??= word;
                        break;
                    default:
                        going = (word == CountWord.Going) != denied;
                        (anyGoing, anyStopped) = (anyGoing || going is true, anyStopped || going is false);
                        break;
                }
            }
        }

        // "2 running 1 dead"
        if (anyGoing && anyStopped && extent is null && Enumerable.Range(from, to - from).Count(i => items[i].Number is not null || items[i].Aside is not null) > 1)
        {
            return "some";
        }

        return (extent, going) switch
        {
            (CountWord.Some, _) => "some",
            (CountWord.None, false) => "all",
            (CountWord.None, _) => "none",
            (CountWord.All, false) => "none",
            (CountWord.All, _) => "all",
            (_, true) => "all",
            (_, false) => "none",
            _ => null,
        };
    }

    // "no, both are running", "no both spinning": the no answers something else.
    private static bool IsRetort(List<Item> items, int at, int to) => items[at].YesNo is false
        && (at + 1 >= items.Count || at + 1 == to || items.GetRange(at + 1, to - at - 1).Exists(i => i.Counts.Any(c => c is CountWord.All or CountWord.Some)));
}
