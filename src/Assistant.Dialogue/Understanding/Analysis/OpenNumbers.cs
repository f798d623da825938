using Assistant.Dialogue.Understanding.Lexicons;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Marks the numbers that the words around them leave open: spans, choices, bounds, relative values, an unseen minus.</summary>
internal sealed class OpenNumbers(Lexicon lexicon)
{
    /// <summary>How many items a small word reaches.</summary>
    private const int FarthestCue = 8;

    public void Mark(Message message, List<Item> items)
    {
        Spans(message, items);
        for (var i = 0; i < items.Count; i++)
        {
            if (items[i].Number is { } number)
            {
                items[i] = items[i] with { Number = Beside(message, items, i, number) };
            }
        }

        SignOpen(items);
    }

    // "20 to 30", "20-30", "five or six", "between 20 and 30" become one open number.
    private void Spans(Message message, List<Item> items)
    {
        for (var i = 0; i + 2 < items.Count; i++)
        {
            if (items[i].Number is not { } low)
            {
                continue;
            }

            var next = NextMeaning(items, i + 1);
            if (next + 1 >= items.Count)
            {
                continue;
            }

            var second = NextMeaning(items, next + 1);
            if (second >= items.Count || items[second].Number is not { } high)
            {
                // "20-30": the dash went to the second number as its sign.
                continue;
            }

            var between = items[next];
            var spans = between.Has(Cue.Range) || IsDash(message, between) || (between.Mark == ItemMark.And && StartsSpan(items, i));
            if (spans)
            {
                var units = high.Units.Count > 0 ? high.Units : low.Units;
                items[i] = new(items[i].Start, items[second].End) { Number = low with { Units = units, Open = Clarify.Value, IsSpan = true } };
                items.RemoveRange(i + 1, second - i);
            }
        }

        for (var i = 0; i + 1 < items.Count; i++)
        {
            // "20-30": the dash was read as the sign of the second number.
            if (items[i].Number is { } low && items[i + 1].Number is { Value: <= 0 } high && message.Tokens[items[i + 1].Start].IsWord(lexicon.Signs.Dash))
            {
                items[i] = new(items[i].Start, items[i + 1].End) { Number = low with { Units = high.Units, Open = Clarify.Value, IsSpan = true } };
                items.RemoveAt(i + 1);
            }
        }
    }

    private bool IsDash(Message message, Item item) => message.Tokens[item.Start].IsWord(lexicon.Signs.Dash);

    private static bool StartsSpan(List<Item> items, int number)
    {
        for (var i = number - 1; i >= 0 && i >= number - 3 && !items[i].IsBreak; i--)
        {
            if (items[i].Has(Cue.Between))
            {
                return true;
            }
        }

        return false;
    }

    private static int NextMeaning(List<Item> items, int at)
    {
        while (at < items.Count && items[at].IsPlain)
        {
            at++;
        }

        return at;
    }

    private static SaidNumber Beside(Message message, List<Item> items, int at, SaidNumber number)
    {
        var after = at + 1 < items.Count ? items[at + 1] : null;
        if (after is not null && after.Has(Cue.OverAmbient))
        {
            return number with { OverAmbient = true };
        }

        if (Told(items, at, Cue.Elsewhere, behind: false))
        {
            return number with { Open = Clarify.Fact };
        }

        if (Told(items, at, Cue.NotNow, behind: true))
        {
            number = number with { NotNow = true };
        }

        var bound = BoundBefore(items, at) || IsChange(items, at) || (after is not null && after.Has(Cue.Deviation)) || (after is not null && (after.Has(Cue.BoundAfter) || after.Has(Cue.Relative))) || IsDecade(message, items, at);
        bound |= after is not null && after.Has(Cue.Bound) && !NumberAfter(items, at + 2) && !LaterName(items, at + 2);
        if (bound)
        {
            return number with { Open = number.Open ?? Clarify.Value };
        }

        return ContentsFollow(items, at) ? number with { Contents = true } : number;
    }

    // "over 300"; but "22 over 201" tells two pressures.
    private static bool BoundBefore(List<Item> items, int at)
    {
        var i = at - 1;
        while (i >= 0 && items[i].IsPlain && !items[i].IsBreak && at - i < 3)
        {
            i--;
        }

        if (i < 0 || items[i].IsBreak)
        {
            return false;
        }

        if (items[i].Has(Cue.Between))
        {
            return true;
        }

        return items[i].Has(Cue.Bound) && !(i > 0 && items[i - 1].Number is { Open: null } && i == at - 1);
    }

    // "dropped 5 pounds", "up about 200 microns"; not "dropped to 36".
    private static bool IsChange(List<Item> items, int at) =>
        at > 0 && (items[at - 1].Has(Cue.Change) || (at > 1 && items[at - 1].IsFiller && items[at - 2].Has(Cue.Change)));

    // A small word in the number's own clause, with no other number and no correction of one between.
    private static bool Told(List<Item> items, int at, Cue cue, bool behind)
    {
        for (var i = at - 1; i >= 0 && at - i <= FarthestCue && !items[i].IsBreak && items[i].Number is null; i--)
        {
            if (items[i].Has(cue) && !(items[i].Has(Cue.Correction) && items.FindIndex(0, i, x => x.Number is not null) >= 0))
            {
                return true;
            }
        }

        for (var i = at + 1; behind && i < items.Count && i - at <= FarthestCue && !items[i].IsBreak && items[i].Number is null; i++)
        {
            if (items[i].Has(cue) && !items[i].Has(Cue.Correction))
            {
                return true;
            }
        }

        return false;
    }

    private static bool NumberAfter(List<Item> items, int at) => NextMeaning(items, at) is var next && next < items.Count && items[next].Number is not null;

    private static bool LaterName(List<Item> items, int at) => at < items.Count && items[at].NamesQuantity;

    // "in the 20s".
    private static bool IsDecade(Message message, List<Item> items, int at)
    {
        var item = items[at];
        var last = message.Tokens[item.End - 1];
        return item.Number is { Units.Count: > 0, Value: >= 10 } && last is { SpaceBefore: false } && last.End - last.Start == 1
            && char.ToLowerInvariant(message.Text[last.Start]) == 's' && item.Number.Value % 10 == 0;
    }

    private static bool ContentsFollow(List<Item> items, int at)
    {
        for (var i = at + 1; i < items.Count && i < at + 4 && !items[i].IsBreak; i++)
        {
            if (items[i].Has(Cue.Contents))
            {
                return true;
            }
        }

        return false;
    }

    // "plus or minus 5", "5 but I can't see if there's a minus": the sign of every number beside it is open.
    private static void SignOpen(List<Item> items)
    {
        if (!items.Exists(i => i.Has(Cue.SignOpen)))
        {
            return;
        }

        for (var i = 0; i < items.Count; i++)
        {
            if (items[i].Number is { } number)
            {
                items[i] = items[i] with { Number = number with { Open = Clarify.Sign } };
            }
        }
    }
}
