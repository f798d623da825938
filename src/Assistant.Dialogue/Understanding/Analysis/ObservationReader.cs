using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>What was observed, clause by clause: the value said, for the fact named in the clause, else the one asked, else the one the words name themselves.</summary>
internal sealed class ObservationReader(Lexicon lexicon)
{
    /// <summary>A message longer than this is a tale: then only what names itself counts.</summary>
    private const int LongestAnswer = 30;

    /// <summary>How far from a value its name is looked for.</summary>
    private const int Reach = 16;

    private readonly CountedObservations counted = new(lexicon);

    /// <param name="place">Where the person stands, or null: a name that several places have is that place's.</param>
    public Observed Read(List<Item> items, Fact? expected, Place? place)
    {
        var observed = new Observed();
        var asked = items.Count <= LongestAnswer ? expected : null;
        Place? told = null;
        for (var from = 0; from < items.Count;)
        {
            var to = from;
            while (to < items.Count && !items[to].IsBreak && !(to > from && items[to].Has(Cue.Correction) && items[to].YesNo is null))
            {
                to++;
            }

            told = Told(items, from, to) ?? told;
            Clause(items, from, to, asked, new(place, told), observed);
            if (to < items.Count && items[to].Has(Cue.Correction))
            {
                observed.Corrected();
            }

            from = Math.Max(to, from + 1);
            if (to < items.Count && items[to].IsBreak)
            {
                from = to + 1;
            }
        }

        return observed;
    }

    // The place the message itself speaks of, by the last name in this stretch that belongs to one place only.
    private static Place? Told(List<Item> items, int from, int to)
    {
        for (var i = to - 1; i >= from; i--)
        {
            if (items[i].Facts.Count > 0 && items[i].Facts[0].Fact.Place is (Place.Room or Place.Unit) and var place && items[i].Facts.All(f => f.Fact.Place == place))
            {
                return place;
            }
        }

        return null;
    }

    private void Clause(List<Item> items, int from, int to, Fact? asked, Whereabouts place, Observed observed)
    {
        var freeTalk = IsFreeTalk(items, from, to);
        for (var i = from; i < to; i++)
        {
            var item = items[i];
            if (item.Has(Cue.Correction) && (i == from || item.Values.Count == 0))
            {
                observed.Corrected();
            }

            if (item.Refrigerant is { } refrigerant)
            {
                observed.Add(FactCatalogue.Refrigerant, IsDenied(items, from, i) ? null : refrigerant.Designation, IsDenied(items, from, i));
            }
            else if (item.Aside is { } number && ToldBy(items, from, to, number, freeTalk ? null : asked) is { } told)
            {
                observed.Add(told, number.Value > 0 ? "yes" : "no", false);
            }
            else if (item.Values.Count > 0)
            {
                Value(items, from, to, i, freeTalk ? null : asked, place, observed);
            }
        }

        counted.Read(items, from, to, freeTalk ? null : asked, place, observed);
        if (asked?.Kind == FactKind.YesNo && !freeTalk)
        {
            YesNo(items, from, to, asked, observed);
        }

        NamedYesNo(items, from, to, observed);
    }

    // "receiver yes": the answer right behind the name of what can only be answered so. A "no" before something else denies that.
    private static void NamedYesNo(List<Item> items, int from, int to, Observed observed)
    {
        for (var i = from + 1; i < to; i++)
        {
            if (items[i].YesNo is { } answer
                && (answer || i + 1 == to || items[i + 1].Facts.Count > 0 && items[i + 1].Values.Count == 0 || items[i + 1].Number is not null)
                && items[i - 1].Facts.Where(f => f.Fact.Kind == FactKind.YesNo).ToList() is [var one] && items[i].Values.All(v => v.Fact != one.Fact) && !observed.Knows(one.Fact))
            {
                observed.AddAnswer(one.Fact, answer);
            }
        }
    }

    private static void Value(List<Item> items, int from, int to, int at, Fact? asked, Whereabouts place, Observed observed)
    {
        var words = items[at].Values;
        var denied = IsDenied(items, from, at);
        var named = Named(items, from, to, at, words, asked);
        if (named.Count > 0 && TheOne(named, asked, place) is { } one)
        {
            Take(one, denied, observed);
            return;
        }

        if (named.Exists(w => w.Fact == asked))
        {
            // "coil clean" from the unit, where the coil in the room was asked.
            observed.UnnamedValue = true;
            return;
        }

        foreach (var word in words)
        {
            if (word.Fact == asked && !NamesAnother(items, Math.Max(from, at - Reach), Math.Min(to, at + Reach), asked))
            {
                if (IsOfAStranger(items, from, at))
                {
                    observed.UnnamedValue = true;
                    return;
                }

                Take(word, denied, observed);
                return;
            }
        }

        foreach (var word in words)
        {
            if (word.Alone && (word.Fact != FactCatalogue.Application || IsOfTheRecord(items, at, asked)))
            {
                Take(word, denied, observed);
                return;
            }
        }
    }

    // "freezer" is the kind of plant beside its refrigerant, or as "walk-in freezer" at the start; elsewhere it is only a room.
    private static bool IsOfTheRecord(List<Item> items, int at, Fact? asked) =>
        items.Exists(i => i.Refrigerant is not null) || StrayNumbers.IsCalledBy(items, at) || asked?.Place == Place.Record || (asked is null && items[at].End - items[at].Start > 1);

    private static void Take(ValueWord word, bool denied, Observed observed) =>
        observed.Add(word.Fact, denied ? word.Denied : word.Value, denied);

    // What the value can be of the facts named in the clause: by the nearest name before it, else the nearest after.
    private static List<ValueWord> Named(List<Item> items, int from, int to, int at, IReadOnlyList<ValueWord> words, Fact? asked)
    {
        for (var distance = 0; distance < Math.Min(to - from, Reach); distance++)
        {
            foreach (var i in new[] { at - distance, at + distance })
            {
                if (i < from || i >= to)
                {
                    continue;
                }

                var found = new List<ValueWord>();
                foreach (var name in items[i].Facts)
                {
                    found.AddRange(words.Where(word => word.Fact == name.Fact && (i != at || word.Alone || word.Fact == asked)));
                }

                if (found.Count > 0)
                {
                    return found;
                }
            }
        }

        return [];
    }

    // What was asked, unless the person is known to stand where another is; else the thing of the place, else the only one there is.
    private static ValueWord? TheOne(List<ValueWord> found, Fact? asked, Whereabouts place)
    {
        if (found.Find(w => w.Fact == asked) is { } answered && !found.Exists(w => place.IsRatherAt(w.Fact, asked!)))
        {
            return answered;
        }

        var here = found.Exists(w => w.Fact != found[0].Fact) ? found.FindAll(w => w.Fact != asked && w.Fact.Place == place.Best) : found;
        return here.Count > 0 && here.TrueForAll(w => w.Fact == here[0].Fact) && (place.Told is not null || here[0].Fact == asked || found.TrueForAll(w => w.Fact != asked)) ? here[0] : null;
    }

    // Another observed thing is named in the clause: the bare value is of that, not of what was asked.
    private static bool NamesAnother(List<Item> items, int from, int to, Fact asked)
    {
        for (var i = from; i < to; i++)
        {
            if (items[i].Facts.Count > 0 && items[i].Values.Count == 0 && items[i].Facts.All(f => f.Fact != asked && !f.Fact.IsQuantity && !f.Loose))
            {
                return true;
            }
        }

        return false;
    }

    // "the heater was open": of something that is no fact, and nothing of what was asked.
    private static bool IsOfAStranger(List<Item> items, int from, int at)
    {
        var subject = at - 1;
        while (subject >= from && (items[subject].IsPlain || items[subject].Has(Cue.Past) || items[subject].Has(Cue.Now) || (items[subject].Values.Count > 0 && items[subject].Facts.Count == 0)))
        {
            subject--;
        }

        // Something stands between as "is" does: "completely blocked" has no subject.
        return subject >= from && subject < at - 1 && items[subject].Mark is ItemMark.Stranger or ItemMark.Other && items.GetRange(from, subject - from).TrueForAll(i => i.IsPlain);
    }

    // "24 volts at the solenoid".
    private Fact? ToldBy(List<Item> items, int from, int to, SaidNumber number, Fact? asked)
    {
        foreach (var (fact, symbol) in lexicon.Values.ToldBy)
        {
            var named = fact == asked || items.GetRange(from, to - from).Exists(i => i.Facts.Any(f => f.Fact == fact));
            if (named && number.Open is null && number.Units.Any(u => u.Unit?.Symbol == symbol))
            {
                return fact;
            }
        }

        return null;
    }

    private static void YesNo(List<Item> items, int from, int to, Fact asked, Observed observed)
    {
        for (var i = from; i < to; i++)
        {
            if (items[i].YesNo is { } answer && items[i].Values.All(v => v.Fact != asked) && !observed.Told(asked)
                && !NamesAnother(items, Math.Max(from, i - Reach), Math.Min(to, i + Reach), asked))
            {
                observed.AddAnswer(asked, answer);
            }
        }
    }

    private static bool IsDenied(List<Item> items, int from, int at)
    {
        for (var i = at - 1; i >= from && at - i <= 3; i--)
        {
            // "no, it is running" retorts; "no ice" and "it is not running" deny.
            var retort = items[i].YesNo is false && at - i > 1;
            if (!retort && (items[i].Has(Cue.Not) || (items[i].YesNo is false && items[i].End - items[i].Start > 1)))
            {
                return true;
            }

            if (!items[i].IsPlain && items[i].Facts.Count == 0)
            {
                return false;
            }
        }

        return false;
    }

    private static bool IsFreeTalk(List<Item> items, int from, int to)
    {
        var strangers = 0;
        for (var i = from; i < to; i++)
        {
            strangers += items[i].Mark == ItemMark.Stranger ? 1 : 0;
        }

        return strangers * 3 > to - from;
    }
}
