using Assistant.Voice.Speaking;

namespace Assistant.Voice.Tests.Speaking;

public sealed class SpokenTextTests
{
    [Theory]
    [InlineData("Head pressure 24 bar.", "Head pressure 24 bar.")]
    [InlineData("117 psig.", "117 P S I.")]
    [InlineData("Condensing at 57 °C (dew).", "Condensing at 57 degrees, dew.")]
    [InlineData("Now -8.5 degF, was 12 K.", "Now minus 8.5 degrees, was 12 kelvin.")]
    [InlineData("8.5 inHg vacuum", "8.5 inches of vacuum")]
    [InlineData("R448A from the record", "R 4 4 8 A from the record")]
    [InlineData("Valve: TXV, EEV, fixed?", "Valve: T X V, E E V, fixed?")]
    [InlineData("Reminder in 20 min.", "Reminder in 20 minutes.")]
    [InlineData("under 125 °F or 52 °C", "under 125 degrees Fahrenheit or 52 degrees Celsius")]
    [InlineData("Come back by 2026-07-25: coil iced.", "Come back by July 25, 2026: coil iced.")]
    [InlineData("Over 2000 psi in it, 300 micron.", "Over 2000 P S I in it, 300 microns.")]
    [InlineData("R448A 30 psig = 5 °F dew.", "R 4 4 8 A 30 P S I is 5 degrees dew.")]
    [InlineData("1 lb 1 oz, then 11 oz and 0.1 K", "1 pound 1 ounce, then 11 ounces and 0.1 kelvin")]
    [InlineData("in degC it would, or in psig", "in Celsius it would, or in P S I")]
    [InlineData("Form 1234-56-789", "Form 1234-56-789")]
    [InlineData("a meter, 2 clamps", "a meter, 2 clamps")]
    [InlineData("4 A", "4 amps")]
    [InlineData("room 3 is far", "room 3 is far")]
    public void Units_are_words_and_designations_are_letters(string written, string spoken) => Assert.Equal(spoken, SpokenText.Of(written));

    [Theory]
    [InlineData("117", "1 1 7")]
    [InlineData("-8.5", "minus 8 point 5")]
    public void A_number_is_read_back_digit_by_digit(string number, string digits) => Assert.Equal(digits, SpokenText.Digits(number));

    [Fact]
    public void Only_digits_that_stand_apart_are_marked_as_digits_for_the_voice()
    {
        var ssml = Ssml.Of("1 1 7 P S I & 24.5 bar");

        Assert.Contains("<say-as interpret-as=\"tts:digits\">1 1 7</say-as>", ssml, StringComparison.Ordinal);
        Assert.Contains("24.5 bar", ssml, StringComparison.Ordinal);
        Assert.Contains("&amp;", ssml, StringComparison.Ordinal);
        Assert.Equal(1, ssml.Split("say-as interpret-as").Length - 1);
    }
}
