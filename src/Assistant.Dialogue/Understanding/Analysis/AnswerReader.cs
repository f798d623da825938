using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>What was told in a stretch of a message.</summary>
internal sealed record Told(IReadOnlyList<Reading> Readings, IReadOnlyList<Observation> Observations, Clarify? Open)
{
    public static Told Nothing { get; } = new([], [], null);

    /// <summary>What stands in the message and was not taken, as it was written; empty where all of it was.</summary>
    public IReadOnlyList<string> Unheard { get; init; } = [];

    /// <summary>That it puts right what was said before, or null.</summary>
    public Correcting? Correcting { get; init; }

    /// <summary>Where what is open is a number that can not be, the reading it would make.</summary>
    public Reading? Impossible { get; init; }

    /// <summary>Where the unit is what is open, what was read.</summary>
    public Fact? OpenUnit { get; init; }

    /// <summary>Where a span was told for a number, what was read.</summary>
    public Fact? OpenSpan { get; init; }

    public bool IsNothing => Readings.Count == 0 && Observations.Count == 0 && Open is null;
}

/// <summary>Reads what is told: the numbers with their names, the unnamed ones for what was asked, and what was observed.</summary>
internal sealed class AnswerReader(Lexicon lexicon)
{
    private readonly ItemReader itemReader = new(lexicon);
    private readonly OpenNumbers openNumbers = new(lexicon);
    private readonly StrayNumbers strays = new(lexicon);
    private readonly ObservationReader observations = new(lexicon);

    public Told Read(Message message, int start, int end, UnderstandingContext context)
    {
        var items = itemReader.Read(message, start, end, context.Expected);
        openNumbers.Mark(message, items);
        strays.Remove(message, items, context.Expected);
        var correcting = Corrections.In(items);
        var denied = Superseding.Apply(items, context.Expected);
        var (nameOf, ambiguous) = Naming.Assign(items, context.Expected);
        var readings = new ReadingCollector(items, context);
        var unnamed = readings.TakeNamed(nameOf, ambiguous, lexicon);
        var observed = observations.Read(Unspoken(items, nameOf), context.Expected, context.Place);
        if (context.IsRoomUnknown)
        {
            RoomName.Tell(items, observed);
        }

        new UnnamedNumbers(items, readings, context).Take(unnamed, ambiguous);
        if (denied)
        {
            readings.LeaveOpen(Clarify.Value);
        }

        var open = readings.Open ?? (observed.AnyOpen ? Clarify.Value : null);
        var told = new Told(readings.Readings, [.. observed.Clear], open) { Correcting = correcting, Impossible = readings.Impossible, OpenUnit = readings.OpenUnit, OpenSpan = readings.OpenSpan };
        return told.IsNothing
            ? told with { Open = Silence.Open(items, context.Expected, observed) }
            : told with { Unheard = LeftOver.Of(message, items, readings, told.Readings.Count + told.Observations.Count) };
    }

    // A word that named a number's fact observes nothing besides ("freezer is at -10").
    private static List<Item> Unspoken(List<Item> items, Dictionary<int, int> nameOf) =>
        nameOf.Count == 0 ? items : Without(items, [.. nameOf.Values]);

    private static List<Item> Without(List<Item> items, HashSet<int> names) =>
        [.. items.Select((item, i) => names.Contains(i) && !StrayNumbers.IsCalledBy(items, i) ? item with { Values = [], Counts = [] } : item)];
}
