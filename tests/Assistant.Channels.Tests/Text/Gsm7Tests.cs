using Assistant.Channels.Text;
using CsCheck;

namespace Assistant.Channels.Tests.Text;

/// <summary>Costs and segment sizes after 3GPP TS 23.038 and 23.040.</summary>
public class Gsm7Tests
{
    [Theory]
    [InlineData("hd 201 psig", 11)]
    [InlineData("@£ñà", 4)]
    [InlineData("€", 2)]
    [InlineData("[x]", 5)]
    [InlineData("", 0)]
    public void A_letter_of_the_extension_table_costs_two_septets(string text, int septets) => Assert.Equal(septets, Gsm7.Length(text));

    [Theory]
    [InlineData(0, 0)]
    [InlineData(160, 1)]
    [InlineData(161, 2)]
    [InlineData(306, 2)]
    [InlineData(307, 3)]
    [InlineData(459, 3)]
    [InlineData(460, 4)]
    public void One_segment_holds_160_and_each_of_several_153(int letters, int segments) => Assert.Equal(segments, Gsm7.Segments(new string('x', letters)));

    [Fact]
    public void A_letter_of_two_septets_is_not_torn_between_two_segments()
    {
        Assert.Equal(2, Gsm7.Segments(new string('x', 152) + "xx" + new string('x', 152)));
        Assert.Equal(3, Gsm7.Segments(new string('x', 152) + "€" + new string('x', 152)));
    }

    [Theory]
    [InlineData("47 °F", "47 F")]
    [InlineData("5 µm", "5 um")]
    [InlineData("a – b — c", "a - b - c")]
    [InlineData("“so” it’s", "\"so\" it's")]
    [InlineData("½ turn…", "1/2 turn...")]
    [InlineData("Šířka", "Sirka")]
    [InlineData("日", "?")]
    [InlineData("😀", "?")]
    public void What_the_alphabet_lacks_is_written_plainly(string text, string written) => Assert.Equal(written, Gsm7.Transliterate(text));

    [Theory]
    [InlineData("é à Ä ß ñ Ω {}[]~|^\\ €")]
    public void What_the_alphabet_has_stays(string text) => Assert.Equal(text, Gsm7.Transliterate(text));

    [Fact]
    public void Any_text_comes_out_in_the_alphabet() => Gen.String.Sample(text => Gsm7.Holds(Gsm7.Transliterate(text)), iter: 5000);
}
