using Assistant.Dialogue.Questions;
using Assistant.Dialogue.Tests.Understanding;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Questions;

/// <summary>Whole questions, from the words to the answer.</summary>
public sealed class AskedInWordsTests
{
    private static readonly FactSet Known = FactSet.Of(
        new Observation(FactCatalogue.Refrigerant, "R448A"),
        new Observation(FactCatalogue.Application, "cooler"),
        new Reading(FactCatalogue.DesignCondenserSplit, 15, UnitOfMeasure.FahrenheitDifference));

    // Figures: R-448A 181.5 psig at 90 degF dew; 40 CFR 82.152 for the leak rate; the unit definitions.
    [Theory]
    [InlineData("what is saturation for 448A at 181.5 pounds", "^R448A at 18[12] psig: 90 °F dew, (79|80|81) °F bubble")]
    [InlineData("what should my head pressure be at 75 outside", "^At 75 °F outside about 18[12] psig")]
    [InlineData("what superheat should I have", "^At the evaporator 8 °F to 12 °F")]
    [InlineData("what subcooling am I looking for", "^Usually 5 °F to 10 °F of the liquid")]
    [InlineData("what should the head pressure valve be set at", "^No setting is on record. Usual is 90 °F")]
    [InlineData("34 F in C", "^34 °F is 1.11 °C")]
    [InlineData("convert 150 kpa to psi", "^150 kPa is 21.8 psig")]
    [InlineData("what leak rate is 4 lb a year on a 20 lb charge", "^20 % of the full charge a year")]
    [InlineData("can I break the vacuum at 450 microns", "^450 micron is deep enough to test, not yet to break")]
    [InlineData("it's 75 out here. what should my head pressure be?", "^At 75 °F outside about 18[12] psig")]
    [InlineData("subcooling at 210.9 psi and 82 degree liquid line on 448a", "^Subcooling 8 °F")]
    [InlineData("what was the refrigerant again", "^Refrigerant: R448A")]
    [InlineData("what did I read for the head", "^Head pressure: not read on this visit yet")]
    [InlineData("how cold can it get before the head pressure control has to work", "^Down to about 75 °F outside")]
    [InlineData("36 tubes 6 ft long 0.3 inch bore", "^The tubes hold 0.106 ft")]
    [InlineData("36 tubes, 2 m long, 8 mm bore", "^The tubes hold 0.128 ft")]
    public void A_question_in_words_is_answered(string words, string answer) => Assert.Matches(answer, Said(words, null));

    [Fact]
    public void A_reading_told_before_the_question_counts_for_it() =>
        Assert.Matches("^800 micron is not deep enough", Said("it's at 800 microns, is that good enough?", FactCatalogue.VacuumLevel));

    private static string Said(string words, Trade.Facts.Fact? expected)
    {
        var understood = LexiconFiles.Understander.Understand(words, new(expected, UnitSystem.Us));
        Assert.Equal(Intent.Question, understood.Intent);
        return new QuestionAnswerer(Call.Phrases).Answer(understood, Known, UnitSystem.Us)!.Say.Full;
    }
}
