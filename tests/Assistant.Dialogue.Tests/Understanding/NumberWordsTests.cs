using System.Globalization;
using Assistant.Dialogue.Understanding.Lexicons;
using Microsoft.Recognizers.Text;
using Microsoft.Recognizers.Text.Number;

namespace Assistant.Dialogue.Tests.Understanding;

public sealed class NumberWordsTests
{
    [Fact]
    public void Every_cardinal_of_the_lexicon_has_the_value_the_number_recogniser_gives_it()
    {
        var cardinals = LexiconPhrases.Read(LexiconFiles.Files).Cardinals;

        Assert.Equal(30, cardinals.Count);
        Assert.All(cardinals, said => Assert.Equal(said.Key, Recognised(said.Value) ?? Recognised("one " + said.Value)));
    }

    [Theory]
    [InlineData("one half", 0.5)]
    [InlineData("one quarter", 0.25)]
    public void The_fractions_of_the_lexicon_are_worth_what_the_number_recogniser_says(string said, double value) => Assert.Equal(value, Recognised(said));

    private static double? Recognised(string text) =>
        NumberRecognizer.RecognizeNumber(text, Culture.English) is [{ } only] && only.Start == 0 && only.End == text.Length - 1
            ? double.Parse((string)only.Resolution["value"], CultureInfo.InvariantCulture)
            : null;
}
