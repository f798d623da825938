using Assistant.App.Web;

namespace Assistant.App.Tests.Web;

public class RequestRulesTests
{
    [Theory]
    [InlineData("0f8fad5b-d9cb-469f-a165-70867728950e")]
    [InlineData("12345678")]
    public void An_id_made_by_the_page_is_taken(string id) => Assert.Equal(id, RequestRules.Id(id));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("short")]
    [InlineData("../../etc/passwd")]
    [InlineData("12345678\n")]
    [InlineData("1234567 8")]
    public void Anything_else_is_no_id(string? id) => Assert.Throws<RequestRefused>(() => RequestRules.Id(id));

    [Fact]
    public void A_line_is_trimmed() => Assert.Equal("9 degC", RequestRules.Line("text", "  9 degC ", 10));

    [Theory]
    [InlineData("", "text: it is empty; one line of text is wanted.")]
    [InlineData("12345678901", "text: 11 characters; 10 are the most.")]
    [InlineData("a\u0000b", "text: plain text on one line is wanted, without control characters.")]
    public void A_line_that_can_not_be_taken_says_what_would_be_right(string text, string message) =>
        Assert.Equal(message, Assert.Throws<RequestRefused>(() => RequestRules.Line("text", text, 10)).Message);

    [Fact]
    public void A_nameless_person_is_the_technician() => Assert.Equal("technician", RequestRules.Person(" "));

    [Fact]
    public void Units_are_us_or_metric() => Assert.Throws<RequestRefused>(() => RequestRules.Units("imperial"));
}
