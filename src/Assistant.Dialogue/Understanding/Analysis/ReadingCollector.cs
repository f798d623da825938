using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Collects the readings of a message, the later value of a fact in place of the earlier, and the first thing left open.</summary>
internal sealed class ReadingCollector(List<Item> items, UnderstandingContext context)
{
    private readonly List<Reading> readings = [];
    private readonly List<SaidNumber> withUnits = [.. items.Select(i => i.Number).OfType<SaidNumber>().Where(n => n is { IsBare: false, Open: null })];

    private readonly HashSet<SaidNumber> taken = new(ReferenceEqualityComparer.Instance);

    public IReadOnlyList<Reading> Readings => readings;

    public Clarify? Open { get; private set; }

    /// <summary>Where the unit is what is open, what was read; otherwise null.</summary>
    public Fact? OpenUnit { get; private set; }

    /// <summary>Where that is a span for a number, what was read; otherwise null.</summary>
    public Fact? OpenSpan { get; private set; }

    /// <summary>Where that is a number which can not be, the reading it would make; otherwise null.</summary>
    public Reading? Impossible { get; private set; }

    public void LeaveOpen(Clarify open) => Open ??= open;

    public bool Has(Fact fact) => readings.Exists(r => r.Fact == fact);

    public bool HasKind(FactKind kind) => readings.Exists(r => r.Fact.Kind == kind);

    /// <summary>Counts the number as taken: a reading was made of what it says together with another.</summary>
    public void Cover(SaidNumber number) => taken.Add(number);

    /// <summary>True where the number became a reading.</summary>
    public bool Took(SaidNumber number) => taken.Contains(number);

    public void Drop(Fact fact) => readings.RemoveAll(r => r.Fact == fact);

    /// <summary>Takes the numbers that are named; gives back those that are not, in order.</summary>
    public List<int> TakeNamed(Dictionary<int, int> nameOf, bool ambiguous, Lexicon lexicon)
    {
        var unnamed = new List<int>();
        for (var i = 0; i < items.Count; i++)
        {
            if (items[i].Number is not { } number)
            {
                continue;
            }

            var fact = nameOf.TryGetValue(i, out var name) ? FactOf(items[name], number) : ByUnit(number, lexicon);
            if (fact is null)
            {
                unnamed.Add(i);
            }
            else if (ambiguous)
            {
                LeaveOpen(Clarify.Value);
            }
            else
            {
                Take(number, Placed(fact, i, nameOf.TryGetValue(i, out name) ? name : i));
            }
        }

        return unnamed;
    }

    public void Take(SaidNumber number, Fact fact)
    {
        // "suction 50 F", where the line's temperature was asked.
        if (context.Expected is { } asked && !QuantityResolver.Fits(number, fact) && QuantityResolver.Fits(number, asked) && LineOf(fact).Contains(asked))
        {
            fact = asked;
        }

        var (reading, open, impossible) = QuantityResolver.Resolve(number, fact, context.Units);
        Impossible ??= Open is null ? impossible : null;
        if (reading is not null && MixesUnits(number, fact))
        {
            (reading, open) = (null, Clarify.Unit);
        }

        Drop(fact);
        if (reading is not null)
        {
            readings.Add(reading);
            taken.Add(number);
        }
        else
        {
            OpenUnit ??= Open is null && open == Clarify.Unit ? fact : null;
            OpenSpan ??= Open is null && number.IsSpan && open == Clarify.Value ? fact : null;
            LeaveOpen(open ?? Clarify.Value);
        }
    }

    // A bare number beside one with a unit that is not the site's: the bare one may be in that unit too.
    private bool MixesUnits(SaidNumber number, Fact fact)
    {
        if (!number.IsBare)
        {
            return false;
        }

        foreach (var other in withUnits)
        {
            if (QuantityResolver.Fits(other, fact)
                && QuantityResolver.Resolve(other, fact, context.Units).Reading is { } said
                && QuantityResolver.Resolve(number, fact, context.Units).Reading is { } bare && said.Unit != bare.Unit && !SameScale(said.Unit, bare.Unit))
            {
                return true;
            }
        }

        return false;
    }

    private static bool SameScale(UnitOfMeasure left, UnitOfMeasure right) =>
        left.Dimension is Dimension.Mass or Dimension.Time || (left == UnitOfMeasure.InchesOfMercuryVacuum && right == UnitOfMeasure.Psig);

    private Fact? FactOf(Item name, SaidNumber number)
    {
        var quantities = name.Facts.Where(f => f.Fact.IsQuantity).ToList();
        var fact = quantities[0];
        if (!fact.Loose)
        {
            return fact.Fact;
        }

        if (context.Expected is { } asked && fact.YieldsTo.Contains(asked))
        {
            return null;
        }

        return QuantityResolver.Fits(number, fact.Fact) && !(context.Expected?.Kind == FactKind.Vacuum && fact.Fact.Kind == FactKind.Current)
            ? fact.Fact
            : null;
    }

    // "8.2 amps" names itself, unless another current was asked.
    private Fact? ByUnit(SaidNumber number, Lexicon lexicon)
    {
        foreach (var unit in number.Units)
        {
            if (!unit.Everyday && unit.Unit is { } said && lexicon.Facts.NamedByUnit.TryGetValue(said.Symbol, out var fact))
            {
                return context.Expected?.Kind == fact.Kind ? context.Expected : fact;
            }
        }

        return null;
    }

    // Of which line's temperature a gauge's name may speak.
    private static Fact[] LineOf(Fact gauge) =>
        gauge == FactCatalogue.SuctionPressure ? [FactCatalogue.SuctionLineTemperatureAtCompressor, FactCatalogue.SuctionLineTemperatureAtBulb]
        : gauge == FactCatalogue.DischargePressure ? [FactCatalogue.DischargeLineTemperature]
        : gauge == FactCatalogue.LiquidPressure ? [FactCatalogue.LiquidLineTemperature] : [];

    private static bool IsAtRest(Fact fact) => fact == FactCatalogue.DischargePressure || fact == FactCatalogue.HighSideStandingPressure || fact == FactCatalogue.AmbientTemperature;

    /// <summary>The fact as the place beside it turns it: "at the coil".</summary>
    public Fact Placed(Fact fact, int number, int name)
    {
        foreach (var at in new[] { number, name })
        {
            for (var i = at + 1; i < items.Count && i <= at + 2 && !items[i].IsBreak; i++)
            {
                if (items[i].Place is { } turns && turns.TryGetValue(fact, out var turned))
                {
                    return turned;
                }
            }
        }

        // "high side 190", where it was asked how that stands at rest and no other gauge or line is told.
        if (context.Expected == FactCatalogue.HighSideStandingPressure && fact == FactCatalogue.DischargePressure && items.TrueForAll(i => !i.NamesQuantity || i.Facts.All(f => IsAtRest(f.Fact))))
        {
            return context.Expected;
        }

        // "suction line" is the bulb's where the bulb was asked.
        return context.Expected == FactCatalogue.SuctionLineTemperatureAtBulb && fact == FactCatalogue.SuctionLineTemperatureAtCompressor ? context.Expected : fact;
    }
}
