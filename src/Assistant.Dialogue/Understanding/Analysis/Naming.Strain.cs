using Assistant.Dialogue.Understanding.Lexicons;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <content>How much strain it is for a name to take a number: by order, by what stands between, by the unit.</content>
internal sealed partial class Naming
{
    private const double NumberBefore = 0.5;
    private const double NumberBeforeJoined = 0.1;
    private const double AcrossPause = 1.2;
    private const double AcrossAnd = 0.6;
    private const double WrongUnit = 2;

    // The nearest number on one side, with no other fact's name between.
    private int Neighbour(int name, int step)
    {
        for (var i = name + step; i >= 0 && i < items.Count && items[i].Mark != ItemMark.Stop; i += step)
        {
            if (items[i].Number is not null)
            {
                return i;
            }

            if (items[i].Mark == ItemMark.Stray || (items[i].NamesQuantity && !Same(i, name)))
            {
                return -1;
            }
        }

        return -1;
    }

    private double CostOf(int name, int number)
    {
        var said = items[number].Number!;
        var cost = number < name ? (number + 1 < name && IsJoint(number, name) ? NumberBeforeJoined : NumberBefore) : 0;
        var (from, to) = number < name ? (number, name) : (name, number);
        for (var i = from + 1; i < to; i++)
        {
            cost += items[i].Mark switch
            {
                ItemMark.Pause => AcrossPause,
                ItemMark.And or ItemMark.Slash => AcrossAnd,
                _ => items[i].Has(Cue.Correction) ? 0 : 0.04,
            };
        }

        return Fits(name, said) ? cost : cost + WrongUnit;
    }

    private bool Fits(int name, SaidNumber said) =>
        items[name].Facts.Any(f => f.Fact.IsQuantity && QuantityResolver.Fits(said, f.Fact) && !(f.Loose && expected is not null && f.YieldsTo.Contains(expected)));

    // A loose name takes no number that does not fit it: it gives way.
    private int Candidate(int name, int step)
    {
        var number = Neighbour(name, step);
        return number >= 0 && Loose(name) && !Fits(name, items[number].Number!) ? -1 : number;
    }

    // "117 on the head", "10 degrees of superheat": only small words between.
    private bool IsJoint(int number, int name)
    {
        for (var i = number + 1; i < name; i++)
        {
            if (items[i].IsBreak || items[i].Mark is ItemMark.And or ItemMark.Slash)
            {
                return false;
            }
        }

        return true;
    }
}
