using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Text;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Takes out the numbers that are no readings: order numbers, counts, times of day, money, volts, free talk.</summary>
internal sealed class StrayNumbers(Lexicon lexicon)
{
    /// <summary>How far around a number its company is looked at.</summary>
    private const int Reach = 20;

    /// <summary>Things are numbered from one, and nobody has ten of them: a number from here on behind "unit" may be read.</summary>
    private const double FewestOfReading = 10;

    /// <summary>From here on it is an order's or a ticket's.</summary>
    private const double FewestOfOrder = 1000;

    public void Remove(Message message, List<Item> items, Fact? expected)
    {
        for (var i = 0; i < items.Count; i++)
        {
            if (items[i].Number is not { } number)
            {
                continue;
            }

            if (IsStray(message, items, i, number, expected))
            {
                items[i] = items[i] with { Number = null, Aside = number, Mark = ItemMark.Stray, IsPassedOver = MayBeRead(message, items, i, number) };
            }
            else
            {
                items[i] = items[i] with { Number = number with { AmongStrangers = AmongStrangers(message, items, i) } };
            }
        }
    }

    // A number that is passed over but may be a reading for all that is known: "unit 24", "45 whatever". Names, counts of things, times and money are none.
    private bool MayBeRead(Message message, List<Item> items, int at, SaidNumber number)
    {
        var after = at + 1 < items.Count ? items[at + 1] : null;
        if (after is not null && (after.Has(Cue.Clock) || after.Has(Cue.Ago) || after.Has(Cue.Count) || after.Mark == ItemMark.Clock) || (at > 0 && (items[at - 1].Mark == ItemMark.Clock || items[at - 1].Has(Cue.Clock))))
        {
            return false;
        }

        if (!number.IsBare)
        {
            return !NamesRoom(message, items, at) && !items.Exists(i => i.Facts.Any(f => lexicon.Values.ToldBy.ContainsKey(f.Fact)));
        }

        return IsLabelled(items, at) ? Math.Abs(number.Value) is >= FewestOfReading and < FewestOfOrder || number.Value < 0 : after?.Mark is ItemMark.Stranger or ItemMark.Other;
    }

    private bool IsStray(Message message, List<Item> items, int at, SaidNumber number, Fact? expected)
    {
        var item = items[at];
        var before = at > 0 ? items[at - 1] : null;
        var after = at + 1 < items.Count ? items[at + 1] : null;
        if (before is { Mark: ItemMark.Clock } || after is { Mark: ItemMark.Clock } || (after?.Has(Cue.Clock) ?? false) || (before?.Has(Cue.Clock) ?? false))
        {
            return true;
        }

        if (IsOfNoFact(number, expected, items) || (after?.Has(Cue.Ago) ?? false))
        {
            return true;
        }

        if (item.Start > 0 && message.Tokens[item.Start - 1] is { Kind: TokenKind.Symbol } sign && (sign.IsWord(lexicon.Signs.Dollar) || sign.IsWord(lexicon.Commands.NumberSlot)))
        {
            return true;
        }

        if (NamesRoom(message, items, at))
        {
            return true;
        }

        if (!number.IsBare)
        {
            return false;
        }

        return IsPronoun(message, items, at, number) || (IsLabelled(items, at) && !IsNamedBehind(items, at, number)) || (after is not null && CountedBy(after) && !IsEntryOfList(items, at));
    }

    // "the 36 degree cooler reads 52": what the room is called by, and what it is said to be. Its reading stands behind.
    private static bool NamesRoom(Message message, List<Item> items, int at)
    {
        var last = message.Tokens[items[at].End - 1];
        return message.Text.AsSpan(last.Start, last.End - last.Start).Equals("degree", StringComparison.OrdinalIgnoreCase)
            && at + 1 < items.Count && items[at + 1].Values.Any(v => v.Fact == FactCatalogue.Application)
            && items.FindIndex(at + 2, i => i.Number is not null) > 0;
    }

    /// <summary>True for the kind of a room that stands behind a number it is called by: it is told, whatever else the word names.</summary>
    public static bool IsCalledBy(List<Item> items, int at) => at > 0 && items[at - 1] is { Mark: ItemMark.Stray, Aside.Units.Count: > 0 }
        && items[at].Values.Any(v => v.Fact == FactCatalogue.Application);

    // "the one standing here", "the low pressure one"
    private bool IsPronoun(Message message, List<Item> items, int at, SaidNumber number)
    {
        var start = items[at].Start;
        if (number.Value != 1 || start == 0 || items[at].End > start + 1 || message.Tokens[start].Kind != TokenKind.Word)
        {
            return false;
        }

        var before = items[at - 1].NamesQuantity ? items[at - 1].Start - 1 : start - 1;
        return before >= 0 && lexicon.Filling.BeforeOne.Contains(message.Tokens[before].Word);
    }

    // "amb 91 set 36 diff 4 evap fans all": a list of names, each before its number, where the counted noun has its own value after it.
    private static bool IsEntryOfList(List<Item> items, int at) =>
        IsNamedBefore(items, at) && at + 2 < items.Count && (items[at + 2].Values.Count > 0 || items[at + 2].Counts.Contains(CountWord.All))
        && Enumerable.Range(0, items.Count).Any(i => i != at && items[i].Number is { IsBare: true } && IsNamedBefore(items, i));

    private static bool IsNamedBefore(List<Item> items, int at) => at > 0 && items[at - 1].NamesQuantity;

    // Volts, percent and times, unless the fact is asked or named.
    private static bool IsOfNoFact(SaidNumber number, Fact? expected, List<Item> items)
    {
        foreach (var unit in number.Units)
        {
            if (unit.Unit?.Dimension is not (Dimension.Voltage or Dimension.Ratio))
            {
                return false;
            }
        }

        return number.Units.Count > 0 && expected?.Kind != FactKind.Voltage && !items.Exists(i => i.Facts.Any(f => f.Fact.Kind == FactKind.Voltage));
    }

    // "unit 78 outside": the name of what is read stands right behind it, and no number of its own after that.
    private static bool IsNamedBehind(List<Item> items, int at, SaidNumber number) =>
        number.Value is >= FewestOfReading and < FewestOfOrder && at + 1 < items.Count && items[at + 1].NamesQuantity && !(at + 2 < items.Count && items[at + 2].Number is not null);

    // "unit 4", "work order number is 40117"; not "box is at 38", "compressor 8.2".
    private static bool IsLabelled(List<Item> items, int at)
    {
        var i = at - 1;
        var distance = 0;
        while (i >= 0 && items[i].IsPlain && !items[i].Has(Cue.Label) && distance < 2)
        {
            i--;
            distance++;
        }

        if (i < 0 || !items[i].Has(Cue.Label))
        {
            return false;
        }

        var names = items[i].NamesQuantity;
        return distance == 0 ? !names : !names && items[i].Facts.Count == 0 && items[i].End - items[i].Start > 1;
    }

    // "three fans", "22 years", "two packs": the noun makes it a count.
    private bool CountedBy(Item after) =>
        after.Mark == ItemMark.Stranger || after.Mark == ItemMark.Other
        || (after.Has(Cue.Count) && !after.NamesQuantity)
        || (!after.NamesQuantity && after.Facts.Any(f => lexicon.Values.Counted.Contains(f.Fact)));

    // "50 on my whatever": an instrument by a name of its own.
    private bool IsOwn(Message message, Item item) => item.Start > 1
        && lexicon.Filling.Own.Contains(message.Tokens[item.Start - 1].Word) && lexicon.Filling.ReadOn.Contains(message.Tokens[item.Start - 2].Word);

    // How far the clause around the number is free talk.
    private bool AmongStrangers(Message message, List<Item> items, int at)
    {
        var (strangers, known) = (0, 0);
        for (var step = -1; step <= 1; step += 2)
        {
            for (var i = at + step; i >= 0 && i < items.Count && !items[i].IsBreak && Math.Abs(i - at) <= Reach; i += step)
            {
                if (step > 0 && IsOwn(message, items[i]))
                {
                    break;
                }

                strangers += items[i].Mark is ItemMark.Stranger ? 2 : items[i].Mark is ItemMark.Other ? 1 : 0;
                known += items[i].Mark is ItemMark.Stranger or ItemMark.Other ? 0 : 1;
            }
        }

        return items[at].Number!.IsBare ? strangers > 0 : strangers > known;
    }
}
