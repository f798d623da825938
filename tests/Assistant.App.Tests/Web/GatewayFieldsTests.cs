using System.Text;
using Assistant.App.Web;
using Microsoft.AspNetCore.Http;

namespace Assistant.App.Tests.Web;

public class GatewayFieldsTests
{
    [Theory]
    [InlineData("?text=box+47+%40+5%C2%B0", "box 47 @ 5°")]
    [InlineData("?charset=UTF-8&text=caf%C3%A9", "café")]
    [InlineData("?charset=UTF-16BE&text=%00b%00o%00x%20%AC", "box€")]
    [InlineData("?charset=ISO-8859-1&text=5%B0", "5°")]
    [InlineData("?text=100%25+a%2", "100% a%2")]
    [InlineData("?text=", "")]
    [InlineData("?from=1", "")]
    public async Task The_words_are_read_in_the_charset_they_came_in(string query, string text) => Assert.Equal(text, (await ReadAsync(query)).Text("text"));

    [Fact]
    public async Task A_form_says_the_same_as_the_address()
    {
        var fields = await ReadAsync("?key=k", "from=%2B15550100&text=hd+201&id=7");

        Assert.Equal(("k", "+15550100", "hd 201", "7"), (fields.Text("key"), fields.Text("from"), fields.Text("text"), fields.Text("id")));
    }

    private static Task<GatewayFields> ReadAsync(string query, string? form = null)
    {
        var request = new DefaultHttpContext().Request;
        request.QueryString = new(query);
        if (form is not null)
        {
            request.ContentType = "application/x-www-form-urlencoded";
            request.Body = new MemoryStream(Encoding.ASCII.GetBytes(form));
        }

        return GatewayFields.ReadAsync(request, CancellationToken.None);
    }
}
