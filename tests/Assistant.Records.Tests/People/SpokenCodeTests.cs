using Assistant.Records.People;
using CsCheck;

namespace Assistant.Records.Tests.People;

public sealed class SpokenCodeTests
{
    [Fact]
    public void No_sign_is_one_that_looks_or_sounds_like_another() =>
        Assert.Empty(SpokenCode.Signs.Intersect("01O5IBCDEGPTVZNSFAHJQU"));

    [Fact]
    public void Every_code_reads_back_as_itself() =>
        Gen.Int[0, int.MaxValue].Sample(seed =>
        {
            var code = SpokenCode.ForEnrolment(new Random(seed).Next);
            return SpokenCode.Read(code) == code && SpokenCode.Read(code.ToLowerInvariant().Replace("-", " ", StringComparison.Ordinal)) == code;
        });

    [Theory]
    [InlineData("")]
    [InlineData("24 psig")]
    [InlineData("K4MX-92L")]
    [InlineData("K4MX-92LRR")]
    [InlineData("K4MX-92L0")]
    public void What_can_be_no_code_is_none(string text) => Assert.Null(SpokenCode.Read(text));

    [Fact]
    public void A_visits_code_is_four_digits_and_longer_where_those_are_taken()
    {
        var chance = new Random(3);
        HashSet<string> taken = new(StringComparer.Ordinal);
        for (var i = 0; i < 2_500; i++)
        {
            Assert.True(taken.Add(SpokenCode.ForVisit(chance.Next, taken)));
        }

        Assert.Equal([4, 5], taken.Select(c => c.Length).Distinct().Order());
    }
}
