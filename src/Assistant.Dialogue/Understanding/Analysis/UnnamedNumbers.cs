using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Gives the numbers that nothing names to what was asked, where that leaves nothing open.</summary>
internal sealed class UnnamedNumbers(List<Item> items, ReadingCollector readings, UnderstandingContext context)
{
    /// <param name="ambiguous">Names and numbers of the message could not be told apart: then none of the rest is taken either.</param>
    public void Take(List<int> unnamed, bool ambiguous)
    {
        Times(unnamed);
        var strange = unnamed.RemoveAll(i => items[i].Number!.AmongStrangers);
        if (unnamed.Count == 0)
        {
            return;
        }

        if (ambiguous || (strange > 0 && unnamed.Count == 1 && items[unnamed[0]].Number!.IsBare))
        {
            // "8.2 on one leg, 8.4 on the other": which of them was asked is not said.
            readings.LeaveOpen(Clarify.Value);
            return;
        }

        if (context.Expected is not { } asked)
        {
            readings.LeaveOpen(items[unnamed[0]].Number!.Open ?? (unnamed.Count > 1 ? Clarify.Value : Clarify.Fact));
            return;
        }

        var fitting = unnamed.Where(i => asked.IsQuantity && QuantityResolver.Fits(items[i].Number!, asked)).ToList();
        var others = unnamed.Except(fitting).ToList();
        if (asked == FactCatalogue.TestPressure || readings.Has(FactCatalogue.TestPressure))
        {
            others.RemoveAll(TakeGasTemperature);
        }

        if (others.Count > 0)
        {
            readings.LeaveOpen(items[others[0]].Number!.Open ?? (items[others[0]].Number!.IsBare ? Clarify.Value : Clarify.Fact));
        }

        if (fitting.Count == 0)
        {
            return;
        }

        if (readings.Has(asked))
        {
            // The asked fact was named with another number: which of the two it is stays open.
            readings.Drop(asked);
            readings.LeaveOpen(Clarify.Value);
        }
        else if (fitting.Count == 1)
        {
            One(fitting[0], asked);
        }
        else if (fitting.Count == 2 && asked == FactCatalogue.SuctionPressure)
        {
            TwoPressures(fitting[0], fitting[1]);
        }
        else
        {
            readings.LeaveOpen(items[fitting[0]].Number!.Open ?? Clarify.Value);
        }
    }

    private void One(int at, Fact asked)
    {
        var number = items[at].Number!;
        var fact = readings.Placed(asked, at, at);
        if (number.Contents && fact == FactCatalogue.CylinderWeight)
        {
            readings.LeaveOpen(Clarify.Value);
            return;
        }

        readings.Take(number, fact);
    }

    // "22 and 201", "10 over 117", "22/201": suction, then discharge, if the second is higher.
    private void TwoPressures(int first, int second)
    {
        var (low, high) = (items[first].Number!, items[second].Number!);
        if (low.Units.Count == 0 && high.Units.Count > 0)
        {
            low = low with { Units = high.Units };
        }

        var suction = QuantityResolver.Resolve(low, FactCatalogue.SuctionPressure, context.Units).Reading;
        var discharge = QuantityResolver.Resolve(high, FactCatalogue.DischargePressure, context.Units).Reading;
        if (suction is null || discharge is null || discharge.Canonical <= suction.Canonical || !IsPair(first, second))
        {
            readings.LeaveOpen(low.Open ?? high.Open ?? Clarify.Value);
            return;
        }

        readings.Take(low, FactCatalogue.SuctionPressure);
        readings.Take(high, FactCatalogue.DischargePressure);
        readings.Cover(items[first].Number!);
    }

    private bool IsPair(int first, int second)
    {
        for (var i = first + 1; i < second; i++)
        {
            if (items[i].Mark is ItemMark.And or ItemMark.Slash || (items[i].Has(Cue.Bound) && items[i].End - items[i].Start == 1))
            {
                return true;
            }
        }

        return false;
    }

    // "150 psi at 70 degrees".
    private bool TakeGasTemperature(int at)
    {
        var number = items[at].Number!;
        if (number.IsBare || !QuantityResolver.Fits(number, FactCatalogue.TestGasTemperature))
        {
            return false;
        }

        readings.Take(number, FactCatalogue.TestGasTemperature);
        return true;
    }

    // A time counts only beside a vacuum or a test pressure, or where it was asked.
    private void Times(List<int> unnamed)
    {
        foreach (var i in unnamed.Where(IsTime).ToList())
        {
            unnamed.Remove(i);
            var beside = context.Expected is { } asked && (asked == FactCatalogue.VacuumLevel || asked == FactCatalogue.TestPressure || asked == FactCatalogue.ElapsedTime)
                || readings.Has(FactCatalogue.VacuumLevel) || readings.Has(FactCatalogue.TestPressure);
            if (beside && items[i].Number is { Open: null } && !items.Exists(x => x.Has(Cue.Ago)))
            {
                readings.Take(items[i].Number!, FactCatalogue.ElapsedTime);
            }
        }
    }

    private bool IsTime(int at) =>
        items[at].Number is { IsBare: false } number && number.Units.All(u => u.Unit?.Dimension == Dimension.Time);
}
