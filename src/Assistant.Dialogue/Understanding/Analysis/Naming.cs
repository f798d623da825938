using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>
/// Decides which number belongs to which name: "suction 10 head 117" and "10 on the low side, 117 on the high side". Each name takes
/// the number before or after it or none; the choice with the least strain wins, and where two are nearly as good the value is open.
/// </summary>
internal sealed partial class Naming
{
    private const double UnnamedNumber = 1.5;
    private const double NumberlessName = 2.5;

    /// <summary>Two readings of a message nearer than this are not told apart.</summary>
    private const double Margin = 0.35;

    private const int MostNames = 8;

    private readonly List<Item> items;
    private readonly Fact? expected;
    private readonly List<int> names = [];
    private readonly (int Before, double BeforeCost, int After, double AfterCost, double NoneCost)[] options;
    private readonly int[] chosen;
    private readonly int[] best;
    private double bestCost = double.MaxValue;
    private double secondCost = double.MaxValue;

    private Naming(List<Item> items, Fact? expected, int from, int to)
    {
        this.items = items;
        this.expected = expected;
        for (var i = from; i < to; i++)
        {
            if (items[i].NamesQuantity && names.Count < MostNames)
            {
                names.Add(i);
            }
        }

        chosen = new int[names.Count];
        best = new int[names.Count];
        options = new (int, double, int, double, double)[names.Count];
        for (var n = 0; n < names.Count; n++)
        {
            var (before, after) = (Candidate(names[n], -1), Candidate(names[n], 1));
            var none = IsToldTwice(n) || Loose(names[n]) || HasChoice(names[n]) ? 0.3 : NumberlessName;
            options[n] = (before, before < 0 ? 0 : CostOf(names[n], before), after, after < 0 ? 0 : CostOf(names[n], after), none);
        }
    }

    /// <summary>For each number item that is named, the name's item; and the numbers whose name is open.</summary>
    public static (Dictionary<int, int> NameOf, bool Ambiguous) Assign(List<Item> items, Fact? expected)
    {
        var all = new Dictionary<int, int>();
        var ambiguous = false;
        for (var from = 0; from < items.Count;)
        {
            var to = from;
            while (to < items.Count && items[to].Mark != ItemMark.Stop)
            {
                to++;
            }

            ambiguous |= new Naming(items, expected, from, to).Sentence(from, to, all);
            from = to + 1;
        }

        return (all, ambiguous);
    }

    private bool Sentence(int from, int to, Dictionary<int, int> all)
    {
        if (names.Count == 0)
        {
            return false;
        }

        var numbers = 0;
        for (var i = from; i < to; i++)
        {
            numbers += items[i].Number is null ? 0 : 1;
        }

        if (numbers == 0)
        {
            return false;
        }

        if (InOrder(from, to, numbers, all))
        {
            return false;
        }

        Choose(0, 0, numbers);
        for (var n = 0; n < names.Count; n++)
        {
            if (best[n] >= 0)
            {
                all[best[n]] = names[n];
            }
        }

        return secondCost - bestCost < Margin || (numbers > Distinct(best) && HasNumberlessName());
    }

    // "suction and head are 22 and 201": two names, then two numbers, in the same order.
    private bool InOrder(int from, int to, int numbers, Dictionary<int, int> all)
    {
        if (names.Count != 2 || numbers != 2 || Same(names[0], names[1]))
        {
            return false;
        }

        var told = new List<int>(2);
        for (var i = from; i < to; i++)
        {
            if (items[i].Number is not null)
            {
                told.Add(i);
            }
        }

        if (told[0] < names[1] || !IsJoined(names[0], names[1]) || !IsJoined(told[0], told[1]))
        {
            return false;
        }

        (all[told[0]], all[told[1]]) = (names[0], names[1]);
        return true;
    }

    private bool IsJoined(int left, int right)
    {
        for (var i = left + 1; i < right; i++)
        {
            if (items[i].Mark is ItemMark.And or ItemMark.Slash || (items[i].Has(Cue.Bound) && right == left + 2))
            {
                return true;
            }
        }

        return false;
    }

    // A name that got no number while a number got no name: they may belong together.
    private bool HasNumberlessName()
    {
        for (var n = 0; n < names.Count; n++)
        {
            if (best[n] < 0 && !IsToldTwice(n) && !Loose(names[n]) && !HasChoice(names[n]))
            {
                return true;
            }
        }

        return false;
    }

    private void Choose(int name, double cost, int numbers)
    {
        if (cost >= secondCost || cost >= bestCost + Margin)
        {
            return;
        }

        if (name == names.Count)
        {
            Compare(cost + (UnnamedNumber * (numbers - Distinct(chosen))));
            return;
        }

        var (before, beforeCost, after, afterCost, noneCost) = options[name];
        if (after >= 0 && IsFree(name, after))
        {
            chosen[name] = after;
            Choose(name + 1, cost + afterCost, numbers);
        }

        if (before >= 0 && IsFree(name, before))
        {
            chosen[name] = before;
            Choose(name + 1, cost + beforeCost, numbers);
        }

        chosen[name] = -1;
        Choose(name + 1, cost + noneCost, numbers);
    }

    private void Compare(double cost)
    {
        if (cost < bestCost)
        {
            if (!SameMeaning())
            {
                secondCost = bestCost;
            }

            bestCost = cost;
            chosen.CopyTo(best, 0);
        }
        else if (cost < secondCost && !SameMeaning())
        {
            secondCost = cost;
        }
    }

    // Two choices that give the same facts to the same numbers are one.
    private bool SameMeaning()
    {
        if (bestCost == double.MaxValue)
        {
            return true;
        }

        for (var n = 0; n < names.Count; n++)
        {
            if (chosen[n] != best[n] && !(chosen[n] >= 0 ? Given(best, chosen[n], names[n]) : Given(chosen, best[n], names[n])))
            {
                return false;
            }
        }

        return true;
    }

    private bool Given(int[] choice, int number, int name)
    {
        for (var n = 0; n < names.Count; n++)
        {
            if (choice[n] == number && Same(names[n], name))
            {
                return true;
            }
        }

        return false;
    }

    private static int Distinct(int[] choice)
    {
        var count = 0;
        for (var n = 0; n < choice.Length; n++)
        {
            if (choice[n] >= 0 && Array.IndexOf(choice, choice[n], 0, n) < 0)
            {
                count++;
            }
        }

        return count;
    }

    private bool IsFree(int name, int number)
    {
        for (var n = 0; n < name; n++)
        {
            if (chosen[n] == number && !Same(names[n], names[name]))
            {
                return false;
            }
        }

        return true;
    }

    private bool IsToldTwice(int name)
    {
        for (var n = 0; n < names.Count; n++)
        {
            if (n != name && Same(names[n], names[name]))
            {
                return true;
            }
        }

        return false;
    }

    private bool Same(int left, int right) => QuantityOf(left) == QuantityOf(right);

    private Fact QuantityOf(int name) => items[name].Facts.First(f => f.Fact.IsQuantity).Fact;

    private bool Loose(int name) => items[name].Facts.All(f => f.Loose || !f.Fact.IsQuantity);

    private bool HasChoice(int name) => items[name].Facts.Any(f => !f.Fact.IsQuantity) || items[name].Values.Count > 0;
}
