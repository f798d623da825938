using System.Collections.Immutable;
using UnitsNet;

namespace Assistant.Trade.Regulations;

/// <summary>
/// Tells a seasonal variance from a leak. Source: 40 CFR 82.152: refrigerant removed for one season and put back for the next
/// within twelve months, no more than was removed.
/// </summary>
public static class SeasonalMoves
{
    /// <summary>The seasonal additions among these events, in order of time, each with what was held for it.</summary>
    /// <param name="withinMonths">The longest time between removal and return, inclusive to the day.</param>
    public static ImmutableArray<SeasonalMove> Of(IEnumerable<ServiceEvent> events, int withinMonths)
    {
        var lots = new List<(DateOnly On, Mass Left)>();
        var moves = ImmutableArray.CreateBuilder<SeasonalMove>();
        // What came out and went back on one day is no change of season.
        foreach (var happened in events.OrderBy(e => e.On).ThenBy(e => e is RefrigerantRemoved ? 1 : 0))
        {
            if (happened is RefrigerantRemoved { ForTheSeason: true } removed)
            {
                lots.Add((removed.On, removed.Amount));
            }
            else if (happened is RefrigerantAdded { Reason: AdditionReason.Seasonal } added)
            {
                lots.RemoveAll(l => l.On.AddMonths(withinMonths) < added.On);
                var held = Mass.FromKilograms(lots.Sum(l => l.Left.Kilograms));
                var proven = Limits.AtLeast(held.Kilograms, added.Amount.Kilograms);
                moves.Add(new SeasonalMove(added, held, proven));
                if (proven)
                {
                    Take(lots, added.Amount);
                }
            }
        }

        return moves.ToImmutable();
    }

    // Oldest first.
    private static void Take(List<(DateOnly On, Mass Left)> lots, Mass amount)
    {
        for (var i = 0; i < lots.Count && amount > Mass.Zero; i++)
        {
            var taken = amount < lots[i].Left ? amount : lots[i].Left;
            lots[i] = (lots[i].On, lots[i].Left - taken);
            amount -= taken;
        }
    }
}

/// <summary>An addition said to be seasonal.</summary>
/// <param name="Held">What was removed for the season within the time allowed and not yet put back.</param>
/// <param name="IsProven">False where more goes in than was held, or nothing was: then all of it counts as leaked.</param>
public sealed record SeasonalMove(RefrigerantAdded Added, Mass Held, bool IsProven);
