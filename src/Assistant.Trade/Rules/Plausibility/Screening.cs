using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;

namespace Assistant.Trade.Rules.Plausibility;

/// <summary>
/// Questions readings before anything is concluded from them: what cannot be by itself, and what others gainsay. The fact that
/// contradicts most is put aside first; between equals the one that would fit in another unit or with its minus; where nothing tells
/// them apart, all of them.
/// </summary>
internal static class Screening
{
    /// <summary>Two gauges that read the same pressure: within 5 psi, common practice for two gauges on one plant.</summary>
    private static readonly GaugePressure SamePressure = new(35_000);

    public static FactSet Of(FactSet facts, out ImmutableArray<Rejection> rejected)
    {
        var found = ImmutableArray<Rejection>.Empty;
        foreach (var value in facts.Values)
        {
            if (!Limits.Allow(value))
            {
                found = found.Add(new(value, new("reason.reading-impossible")));
            }
        }

        foreach (var rejection in found)
        {
            facts = facts.Without(rejection.Value.Fact);
        }

        var refrigerant = RefrigerantLibrary.Find(facts.Word(FactCatalogue.Refrigerant));
        var running = !facts.Is(FactCatalogue.Compressor, "off");
        var said = Testimony.Of(facts, refrigerant);
        if (IsEmptied(facts))
        {
            said[(int)Witness.HighSideAtRest] = double.NaN;
        }

        // A vacuum is nobody's slip: a plant that is shut off pulls itself down as far as its compressor can.
        foreach (var gauge in (ReadOnlySpan<Witness>)[Witness.Suction, Witness.Evaporator])
        {
            if (facts.Find(Testimony.Facts[(int)gauge]) is Reading reading && reading.Unit == UnitOfMeasure.InchesOfMercuryVacuum)
            {
                said[(int)gauge] = double.NaN;
            }
        }

        Span<int> quarrels = stackalloc int[said.Length];
        while (Count(said, running, quarrels))
        {
            // What each of them is charged with is told before any is put aside: without its opponent every reading would fit.
            var culprits = Culprits(said, running, quarrels, facts, refrigerant);
            foreach (var witness in culprits)
            {
                var reading = (Reading)facts.Find(Testimony.Facts[witness])!;
                found = found.Add(new(reading, Why(witness, reading, said, running, facts, refrigerant)));
            }

            foreach (var witness in culprits)
            {
                facts = facts.Without(Testimony.Facts[witness]);
                said[witness] = double.NaN;
            }
        }

        rejected = found.Length > 1 ? found.Sort((a, b) => string.CompareOrdinal(a.Value.Fact.Name, b.Value.Fact.Name)) : found;
        return facts;
    }

    // Without liquid a high side at rest stands far under the temperature around it; an empty glass, or the whole plant at that pressure, bears it out.
    private static bool IsEmptied(FactSet facts) =>
        facts.Is(FactCatalogue.SightGlass, "empty")
        || (facts.Pressure(FactCatalogue.StandingPressure) is { } whole && facts.Pressure(FactCatalogue.HighSideStandingPressure) is { } high
            && Math.Abs(whole.Pascals - high.Pascals) <= SamePressure.Pascals);

    private static bool Count(double[] said, bool running, Span<int> quarrels)
    {
        quarrels.Clear();
        var any = false;
        foreach (var relation in Relation.All)
        {
            if ((running || !relation.RunningOnly) && !relation.Holds(said[(int)relation.One], said[(int)relation.Other]))
            {
                quarrels[(int)relation.One]++;
                quarrels[(int)relation.Other]++;
                any = true;
            }
        }

        return any;
    }

    private static List<int> Culprits(double[] said, bool running, ReadOnlySpan<int> quarrels, FactSet facts, Refrigerant? refrigerant)
    {
        var most = 0;
        foreach (var count in quarrels)
        {
            most = Math.Max(most, count);
        }

        var worst = new List<int>();
        var explained = new List<int>();
        for (var i = 0; i < quarrels.Length; i++)
        {
            if (quarrels[i] == most)
            {
                worst.Add(i);
                if (Explanation(i, said, running, facts, refrigerant) is not null)
                {
                    explained.Add(i);
                }
            }
        }

        return explained.Count == 1 ? explained : worst;
    }

    /// <summary>Every other way in which a reading may have been meant without quarrelling with any other reading.</summary>
    public static IEnumerable<Reading> OtherMeanings(FactSet facts, Func<Reading, bool> suspected)
    {
        var refrigerant = RefrigerantLibrary.Find(facts.Word(FactCatalogue.Refrigerant));
        var running = !facts.Is(FactCatalogue.Compressor, "off");
        var said = Testimony.Of(facts, refrigerant);
        for (var witness = 0; witness < said.Length; witness++)
        {
            if (facts.Find(Testimony.Facts[witness]) is Reading reading && suspected(reading)
                && Explanation(witness, said, running, facts, refrigerant) is { } meant)
            {
                yield return meant;
            }
        }
    }

    // The reading as it was probably meant: one that quarrels with nobody.
    private static Reading? Explanation(int witness, double[] said, bool running, FactSet facts, Refrigerant? refrigerant)
    {
        foreach (var other in Rereading.Of((Reading)facts.Find(Testimony.Facts[witness])!))
        {
            if (Limits.Allow(other) && Fits(witness, Testimony.Of((Witness)witness, other, facts.Barometer, refrigerant), said, running))
            {
                return other;
            }
        }

        return null;
    }

    private static bool Fits(int witness, double value, double[] said, bool running)
    {
        foreach (var relation in Relation.All)
        {
            if ((running || !relation.RunningOnly)
                && (((int)relation.One == witness && !relation.Holds(value, said[(int)relation.Other]))
                    || ((int)relation.Other == witness && !relation.Holds(said[(int)relation.One], value))))
            {
                return false;
            }
        }

        return true;
    }

    private static Reason Why(int witness, Reading reading, double[] said, bool running, FactSet facts, Refrigerant? refrigerant)
    {
        var other = Opponent(witness, said, running);
        return Explanation(witness, said, running, facts, refrigerant) is not { } meant ? new("reason.reading-contradicted", ("other", other.Name))
            : meant.Unit != reading.Unit ? new("reason.reading-in-another-unit", ("other", other.Name), ("unit", meant.Unit.Symbol))
            : new("reason.reading-without-its-minus", ("other", other.Name));
    }

    private static Fact Opponent(int witness, double[] said, bool running)
    {
        foreach (var relation in Relation.All)
        {
            if ((running || !relation.RunningOnly) && !relation.Holds(said[(int)relation.One], said[(int)relation.Other]))
            {
                if ((int)relation.One == witness)
                {
                    return Testimony.Facts[(int)relation.Other];
                }

                if ((int)relation.Other == witness)
                {
                    return Testimony.Facts[(int)relation.One];
                }
            }
        }

        return Testimony.Facts[witness];
    }
}
