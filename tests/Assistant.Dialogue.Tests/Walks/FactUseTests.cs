using Assistant.Dialogue.Tests.CaseRuns;
using Assistant.Dialogue.Tests.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Tests.Walks;

/// <summary>Nothing is asked, or taken down when it is told, that makes no difference to anything.</summary>
public sealed class FactUseTests
{
    private static readonly IEnumerable<WalkStop> Stops = Conversation.Walks.All.SelectMany(w => w.Stops);

    /// <summary>A walk waits for it or turns on it, or a judgement of a walk looks at it.</summary>
    private static readonly HashSet<Fact> OfTheWalks = [.. Stops.SelectMany(OfStop)];

    /// <summary>Without it a case is weighed otherwise.</summary>
    private static readonly HashSet<Fact> OfTheRules = [.. CaseFile.Cases.Concat(CaseFile.Hand).Concat(CaseFile.HandAgain).SelectMany(Weighed)];

    public static TheoryData<string> Facts => [.. FactCatalogue.All.Select(f => f.Name)];

    [Theory]
    [MemberData(nameof(Facts))]
    public void Every_fact_is_used(string name)
    {
        var fact = FactCatalogue.Find(name)!;

        Assert.True(
            OfTheWalks.Contains(fact) || OfTheRules.Contains(fact) || WarnsByItself(fact),
            $"{name} is used by no walk, no judgement, no rule and no caution");
    }

    [Fact]
    public void Every_reading_a_walk_asks_for_is_looked_at_by_somebody()
    {
        var asked = Stops.Where(s => s.Asks is not null && s.Judgement is null).Select(s => s.Asks!).ToHashSet();
        var looked = Stops.SelectMany(s => OfConditions(s).Concat(s.Judgement?.Judgement.Uses ?? [])).Concat(OfTheRules).ToHashSet();

        Assert.Empty(asked.Except(looked).Select(f => f.Name));
    }

    private static bool WarnsByItself(Fact fact) =>
        fact.IsQuantity && !CautionTriggers.For(FactSet.Of(new Reading(fact, 1, FactUnits.For(fact, UnitSystem.Us)[0])), []).IsEmpty;

    private static IEnumerable<Fact> OfStop(WalkStop stop) =>
        OfConditions(stop).Concat(stop.Judgement?.Judgement.Uses ?? []).Concat(stop.Asks is { } asked ? [asked] : []);

    private static IEnumerable<Fact> OfConditions(WalkStop stop) =>
        stop.Next.Select(b => b.When).Append(stop.Until).SelectMany(Of);

    private static IEnumerable<Fact> Of(WalkCondition? condition) => condition switch
    {
        IsWord word => [word.Fact],
        WasWord word => [word.Fact],
        Disagree two => [two.First, two.Second],
        Above above => [above.First, above.Second, above.By],
        IsKnown known => [known.Fact],
        WasRead read => [read.Fact],
        All all => all.Parts.SelectMany(Of),
        _ => [],
    };

    /// <summary>What makes a difference to the findings or their reasons: left out, told beside the rest, or read there instead of elsewhere.</summary>
    private static IEnumerable<Fact> Weighed(FaultCase one)
    {
        var whole = Told(one.Facts);
        var known = one.Facts.Values.Select(v => v.Fact).Where(fact => Told(one.Facts.Without(fact)) != whole);
        var further = FactCatalogue.All.Where(f => !f.IsQuantity && !one.Facts.Has(f))
            .Where(f => f.Choices.Any(word => Told(one.Facts.With(new Observation(f, word))) != whole));
        var elsewhere = one.Facts.Values.OfType<Reading>().Where(r => r.Fact.Kind == FactKind.Temperature).SelectMany(reading =>
        {
            var without = one.Facts.Without(reading.Fact);
            var least = Told(without);
            return FactCatalogue.All.Where(f => f.Kind == FactKind.Temperature && !one.Facts.Has(f) && Told(without.With(reading with { Fact = f })) != least);
        });
        return known.Concat(further).Concat(elsewhere);
    }

    private static string Told(FactSet facts) =>
        string.Join(' ', Assessor.Assess(facts).Findings.Select(f => $"{f.Code} {f.Standing} {f.Because.Length} {f.Against.Length}"));
}
