using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Rules;

/// <summary>
/// Chooses the fact to take next: the one whose symptom separates the leading faults furthest, for the fewest readings and without
/// a walk where it can be helped.
/// </summary>
internal static class NextFact
{
    /// <summary>A walk between room and unit is worth about three readings where one stands.</summary>
    private const double WalkFactor = 0.35;

    private const int Unobtainable = 1000;

    private static readonly float[][] Separations = Separate();

    /// <summary>The fact, or null where no fact would tell the leading faults apart.</summary>
    public static Fact? For(FactSet facts, IReadOnlySet<Fact> skipped, SymptomTable table, ReadOnlySpan<FaultCode> leading)
    {
        var standsAt = StandsAt(facts);
        Fact? best = null;
        var bestScore = 0.0;
        var most = Most(leading.Length);
        for (var s = 0; s < SymptomTable.Count; s++)
        {
            if (table.Knows((Symptom)s))
            {
                continue;
            }

            Fact? first = null;
            var missing = 0;
            var walks = 1.0;
            foreach (var fact in SymptomNeeds.For((Symptom)s))
            {
                if (facts.Has(fact))
                {
                    continue;
                }

                missing = skipped.Contains(fact) || DoesNotExist(fact, facts) ? Unobtainable : missing + 1;
                var here = fact.Place == standsAt || fact.Place is Place.Record or Place.Anywhere;
                walks = here ? walks : WalkFactor;
                first = first is null || (here && first.Place != standsAt) ? fact : first;
            }

            if (first is null || missing >= Unobtainable)
            {
                continue;
            }

            // However far it separates them: it can not come before the best so far.
            if (most * walks / missing <= bestScore)
            {
                continue;
            }

            var score = Separation(s, leading) * walks / missing;
            if (score > bestScore + 1e-9)
            {
                (best, bestScore) = (first, score);
            }
        }

        return best;
    }

    // Where there is no control there is no setting of it.
    private static bool DoesNotExist(Fact fact, FactSet facts) =>
        fact == FactCatalogue.HeadPressureControlSetting && facts.Is(FactCatalogue.HeadPressureControl, "none");

    // Everything at the room comes before the walk outside, so a fact from the unit tells that one has gone there.
    private static Place StandsAt(FactSet facts) => facts.Values.Any(v => v.Fact.Place == Place.Unit) ? Place.Unit : Place.Room;

    private static double Separation(int symptom, ReadOnlySpan<FaultCode> leading)
    {
        var pairs = Separations[symptom];
        var sum = 0.0;
        for (var i = 0; i < leading.Length; i++)
        {
            var apart = pairs.AsSpan((int)leading[i] * FaultRules.All.Length, FaultRules.All.Length);
            var row = 0.0;
            foreach (var other in leading[(i + 1)..])
            {
                row += apart[(int)other];
            }

            // The two best matter most; a pair further down counts less.
            sum += row / (1 + i);
        }

        return sum;
    }

    /// <summary>What <see cref="Separation"/> is at the most: every pair told apart for certain.</summary>
    private static double Most(int leading)
    {
        var sum = 0.0;
        for (var i = 0; i < leading; i++)
        {
            sum += (double)(leading - 1 - i) / (1 + i);
        }

        return sum;
    }

    private static float[][] Separate()
    {
        var rules = FaultRules.All;
        return
        [
            .. Enum.GetValues<Symptom>().Select(symptom =>
                (from one in rules from other in rules select Apart(one.Expects(symptom), other.Expects(symptom))).ToArray()),
        ];
    }

    private static float Apart(Expectation? one, Expectation? other)
    {
        if (one is not { } left || other is not { } right)
        {
            return 0;
        }

        if (left.Words != 0)
        {
            return (left.Words & right.Words) == 0 ? 1 : 0;
        }

        var gap = Math.Max(left.Low - right.High, right.Low - left.High);
        return gap < 0 ? 0 : (float)Math.Min(1, 0.3 + (gap / (3 * (left.Scatter + right.Scatter))));
    }
}
