using Assistant.Trade.Facts;

namespace Assistant.Voice.Tests.Grammars;

/// <summary>The words offered aloud after a miss sound unlike each other and unlike every command: half of the sounds differ at the least.</summary>
[Collection(HearingCollection.Name)]
public sealed class OfferedWordsTests(HearingParts hearing)
{
    private const double LeastDifference = 0.5;

    [Theory]
    [InlineData("ok")]
    [InlineData("done")]
    [InlineData("later")]
    public void A_word_offered_at_a_step_is_unlike_the_other_one_and_every_command_that_means_something_else(string step)
    {
        var offered = hearing.Parts.Grammars.OfferedFor(step);
        var others = Commands().Where(c => !hearing.Parts.Plan.Steps[step].Contains(c));

        Assert.Equal(2, offered.Count);
        Assert.All(offered, word => Assert.All(others.Concat(offered.Where(o => o != word)), other => AssertUnlike(word, other)));
    }

    [Fact]
    public void A_choices_number_is_unlike_every_command_and_tells_itself_from_the_other_numbers_by_the_last_word()
    {
        foreach (var fact in FactCatalogue.All.Where(f => !f.IsQuantity && f.Choices.Length > 1))
        {
            var numbered = hearing.Parts.Grammars.Numbered(fact).Select(n => n.Words).ToList();

            Assert.All(numbered, word => Assert.All(Commands(), command => AssertUnlike(word, command)));
            Assert.All(numbered, word => Assert.All(numbered.Where(o => o != word), other => AssertUnlike(word.Split(' ')[^1], other.Split(' ')[^1])));
        }
    }

    [Fact]
    public void Every_choice_of_a_fact_has_its_number_and_a_list_too_long_to_remember_is_not_read_out()
    {
        Assert.Equal(["number one", "number two", "number three"], hearing.Parts.Grammars.Numbered(FactCatalogue.Find("evaporator_fans")!).Select(n => n.Words));
        Assert.Empty(hearing.Parts.Grammars.Numbered(FactCatalogue.SuctionPressure));
        Assert.All(FactCatalogue.All.Where(f => f.Choices.Length > 6), f => Assert.Empty(hearing.Parts.Grammars.Numbered(f)));
    }

    private IEnumerable<string> Commands() => hearing.Parts.Grammars.Command.Meanings.Values.SelectMany(p => p);

    private void AssertUnlike(string one, string other)
    {
        var difference = hearing.Parts.Sounds.Ways(one).SelectMany(_ => hearing.Parts.Sounds.Ways(other), Difference).Min();

        Assert.True(difference >= LeastDifference, $"'{one}' sounds like '{other}': {difference:0.00} of their sounds differ");
    }

    // Sounds to change, add or leave out, as a share of the longer one's.
    private static double Difference(string[] one, string[] other)
    {
        var row = Enumerable.Range(0, other.Length + 1).ToArray();
        for (var i = 1; i <= one.Length; i++)
        {
            var (diagonal, left) = (row[0], i);
            row[0] = i;
            for (var j = 1; j <= other.Length; j++)
            {
                var cost = Math.Min(Math.Min(row[j], left) + 1, diagonal + (one[i - 1] == other[j - 1] ? 0 : 1));
                (diagonal, row[j], left) = (row[j], cost, cost);
            }
        }

        return (double)row[^1] / Math.Max(one.Length, other.Length);
    }
}
