using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>What a clause says of things that are counted: "all", "1 of 2", "both" of the fans named in it, or of those asked for.</summary>
internal sealed class CountedObservations(Lexicon lexicon)
{
    /// <summary>From so many on it is no count of fans: "80 out" is the air outside.</summary>
    private const double MostCounted = 10;

    public void Read(List<Item> items, int from, int to, Fact? asked, Whereabouts place, Observed observed)
    {
        if (CountedReader.Read(WithoutOthersCounts(items, from, to), from, to) is not { } value)
        {
            return;
        }

        var names = new List<Fact>();
        var others = false;
        for (var i = from; i < to; i++)
        {
            var counted = items[i].Facts.Where(f => lexicon.Values.Counted.Contains(f.Fact)).Select(f => f.Fact).ToList();
            names.AddRange(counted.Where(f => !names.Contains(f)));
            others |= counted.Count == 0 && items[i].Facts.Any(f => !f.Loose);
        }

        if (names.Count == 0 && !others && asked is not null && lexicon.Values.Counted.Contains(asked))
        {
            names.Add(asked);
        }

        if (names.Count > 1 && asked is not null && names.Contains(asked) && !names.Exists(n => place.IsRatherAt(n, asked)))
        {
            names = [asked];
        }
        else if (names.Count > 1 && (place.Told is not null || asked is null || !names.Contains(asked)) && names.FindAll(n => n.Place == place.Best) is [var here])
        {
            names = [here];
        }

        if (names.Count == 1)
        {
            if (!observed.Has(names[0], from))
            {
                observed.Add(names[0], value, false);
            }
        }
        else if (names.Count > 1)
        {
            observed.UnnamedValue = true;
        }
    }

    // "evap fans all ... sol off": in a list a word right behind another thing's name is that thing's and counts no fans.
    private List<Item> WithoutOthersCounts(List<Item> items, int from, int to)
    {
        var counts = Enumerable.Range(from, to - from).Where(i => items[i].Counts.Count > 0).ToList();
        var others = counts.Where(i => i > from && (items[i - 1].Number is { Value: >= MostCounted } || IsOther(items[i - 1])) && (i - 1 == from || items[i - 2].Mark != ItemMark.And)).ToHashSet();
        return others.Count == 0 || others.Count == counts.Count ? items : [.. items.Select((item, i) => others.Contains(i) ? item with { Counts = [] } : item)];
    }

    private bool IsOther(Item name) => name.Facts.Count > 0 && name.Facts.All(f => !f.Fact.IsQuantity && !lexicon.Values.Counted.Contains(f.Fact));
}
