using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.App.Web;

/// <summary>The readings of a visit as the page shows them, each with who took it, when, and what else was read.</summary>
internal static class ReadingViews
{
    private const int MostOthers = 4;

    public static IEnumerable<ReadingView> Of(VisitState state, PhraseBook phrases)
    {
        foreach (var fact in FactCatalogue.All)
        {
            if (state.Questioned.TryGetValue(fact, out var questioned))
            {
                yield return View(state, fact, questioned.Value, taken: null, doubted: true, phrases);
            }

            if (state.Disputes.TryGetValue(fact, out var dispute))
            {
                // Neither counts yet; both are seen.
                yield return View(state, fact, dispute.Other.Value!, dispute.Other, doubted: true, phrases);
            }

            if (state.Facts.Find(fact) is { } value)
            {
                yield return View(state, fact, value, state.History.GetValueOrDefault(fact)?.LastOrDefault(), doubted: false, phrases);
            }
        }
    }

    /// <summary>What every fact is called and how it may be answered: enough to enter any reading without asking the program first.</summary>
    public static IEnumerable<FactView> Catalogue(Trade.Quantities.UnitSystem units, PhraseBook phrases) =>
        from fact in FactCatalogue.All
        where fact.Place != Place.Record
        let name = NamedReadings.Name(fact, phrases)
        where name is not null
        select new FactView(fact.Name, phrases.Word(fact.Name), name, PlaceName(Word(fact.Place), phrases), Symbols(fact, units), NamedReadings.Choices(fact, phrases));

    public static string PlaceName(string? place, PhraseBook phrases) =>
        place is null ? "" : phrases.Has($"place.{place}") ? phrases.Say($"place.{place}", default).Full : place;

    private static ReadingView View(VisitState state, Fact fact, FactValue value, TakenFact? taken, bool doubted, PhraseBook phrases)
    {
        var recorded = !doubted && (taken is null || taken.Place == Word(Place.Record));
        var place = PlaceName(recorded ? Word(Place.Record) : Word(fact.Place), phrases);
        var others = state.History.GetValueOrDefault(fact, [])
            .Where(t => t != taken && t is { Value: not null } && t.Place != Word(Place.Record))
            .Reverse().Take(MostOthers)
            .Select(t => new OtherReadingView(Text(t.Value!, phrases), t.At, t.By));
        return new(
            fact.Name, phrases.Word(fact.Name), place, Text(value, phrases), recorded ? null : taken?.At, recorded ? null : taken?.By, doubted,
            NamedReadings.Name(fact, phrases), Symbols(fact, state.Units), NamedReadings.Choices(fact, phrases), [.. others]);
    }

    private static string Text(FactValue value, PhraseBook phrases) =>
        value is Reading reading ? AmountText.Written(reading) : phrases.Word(((Observation)value).Value);

    private static string[] Symbols(Fact fact, Trade.Quantities.UnitSystem units) => [.. FactUnits.For(fact, units).Select(u => u.Symbol)];

    private static string Word(Place place) => place.ToString().ToLowerInvariant();
}

/// <summary>A fact that can be read on a visit.</summary>
/// <param name="Says">What stands before its value when it is entered by its name.</param>
/// <param name="Choices">The words of each choice when it is entered by its name.</param>
public sealed record FactView(string Fact, string Label, string Says, string Place, IReadOnlyList<string> Units, IReadOnlyDictionary<string, string> Choices);
