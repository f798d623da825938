using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Tests.CaseRuns;

/// <summary>How many readings and walks a visit takes until a fault is likely, asking what the rules ask next, against reading off a list.</summary>
public class NextFactWalkTests(Xunit.Abstractions.ITestOutputHelper output)
{
    [Fact]
    public void Asking_what_tells_most_takes_fewer_readings_and_no_more_walks_than_a_fixed_list()
    {
        var asked = CaseFile.Cases.Select(c => Walk(c.Facts, (known, gone) => Assessor.Assess(known, gone).Next)).ToList();
        var listed = CaseFile.Cases.Select(c => Walk(c.Facts, (known, gone) => FactCatalogue.All.FirstOrDefault(f => !known.Has(f) && !gone.Contains(f)))).ToList();

        output.WriteLine($"asked: median {Median(asked, w => w.Readings)} readings, {Median(asked, w => w.Walks)} walks; "
            + $"listed: {Median(listed, w => w.Readings)} readings, {Median(listed, w => w.Walks)} walks");
        Assert.True(Median(asked, w => w.Readings) < Median(listed, w => w.Readings));
        Assert.True(Median(asked, w => w.Walks) <= Median(listed, w => w.Walks));
    }

    // What the case does not hold can not be read: it is asked for once, costs nothing, and is not asked again.
    private static (int Readings, int Walks) Walk(FactSet plant, Func<FactSet, IReadOnlySet<Fact>, Fact?> choose)
    {
        var known = FactSet.Empty;
        var gone = new HashSet<Fact>();
        var place = Place.Room;
        var (readings, walks) = (0, 0);
        while (choose(known, gone) is { } fact)
        {
            gone.Add(fact);
            if (plant.Find(fact) is not { } value)
            {
                continue;
            }

            readings++;
            if (fact.Place is Place.Room or Place.Unit && fact.Place != place)
            {
                (place, walks) = (fact.Place, walks + 1);
            }

            known = known.With(value);
            if (Assessor.Assess(known).Findings[0].Standing <= Standing.Likely)
            {
                break;
            }
        }

        return (readings, walks);
    }

    private static int Median(List<(int Readings, int Walks)> all, Func<(int Readings, int Walks), int> of) => all.Select(of).Order().ElementAt(all.Count / 2);
}
