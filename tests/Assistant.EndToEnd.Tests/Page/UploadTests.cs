using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Page;

public class UploadTests(AppServer server) : IClassFixture<AppServer>
{
    // The smallest PNG there is: one pixel.
    private static readonly byte[] Pixel = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==");

    [Fact]
    public async Task A_picture_goes_on_where_it_stopped_and_is_taken_once_even_if_the_last_answer_was_lost()
    {
        var visit = await NewVisitAsync();
        var picture = Guid.NewGuid().ToString();
        using var first = await PieceAsync(visit, picture, 0, Pixel[..30]);
        var half = await HowFarAsync(visit, picture);
        using var wrong = await PieceAsync(visit, picture, 10, Pixel[10..]);
        using var last = await PieceAsync(visit, picture, 30, Pixel[30..]);
        using var again = await PieceAsync(visit, picture, 30, Pixel[30..]);

        Assert.Equal(30, (int)half["received"]!);
        Assert.Equal(30, (int)(await wrong.Content.ReadFromJsonAsync<JsonNode>())!["received"]!);
        Assert.NotNull((string?)(await last.Content.ReadFromJsonAsync<JsonNode>())!["picture"]);
        Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        var entries = (await server.Client.GetFromJsonAsync<JsonNode>($"/api/visits/{visit}"))!["turns"]!.AsArray();
        Assert.Equal("Nameplate", (string?)Assert.Single(entries)!["caption"]);
    }

    [Fact]
    public async Task A_file_that_is_no_picture_is_refused_with_its_first_piece_whatever_it_calls_itself()
    {
        using var response = await PieceAsync(await NewVisitAsync(), Guid.NewGuid().ToString(), 0, "<svg onload='alert(1)'>0123456789</svg>"u8.ToArray());

        Assert.Equal(HttpStatusCode.UnsupportedMediaType, response.StatusCode);
        Assert.Equal("A picture is wanted: JPEG, PNG or WebP, in pieces of the size it was said to have.", (string?)(await response.Content.ReadFromJsonAsync<JsonNode>())!["error"]);
    }

    [Fact]
    public async Task A_file_that_only_begins_like_a_picture_is_refused_when_it_is_whole()
    {
        using var response = await PieceAsync(await NewVisitAsync(), Guid.NewGuid().ToString(), 0, [.. Pixel[..20], .. new byte[40]]);

        Assert.Equal(HttpStatusCode.UnsupportedMediaType, response.StatusCode);
    }

    [Theory]
    [InlineData(9_000_000)]
    [InlineData(0)]
    public async Task A_picture_of_a_size_no_phone_sends_is_refused_before_it_is_read(long size)
    {
        var visit = await NewVisitAsync();
        using var response = await server.Client.PostAsync($"/api/visits/{visit}/pictures/{Guid.NewGuid()}?offset=0&size={size}", new ByteArrayContent(Pixel));

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, response.StatusCode);
    }

    private async Task<string> NewVisitAsync()
    {
        var id = Guid.NewGuid().ToString();
        await server.PostAsync("/api/visits", new { id, demo = true });
        return id;
    }

    private async Task<JsonNode> HowFarAsync(string visit, string picture) =>
        (await server.Client.GetFromJsonAsync<JsonNode>($"/api/visits/{visit}/pictures/{picture}"))!;

    private Task<HttpResponseMessage> PieceAsync(string visit, string picture, int offset, byte[] bytes) =>
        server.Client.PostAsync($"/api/visits/{visit}/pictures/{picture}?offset={offset}&size={(bytes.Length + offset < 60 ? Pixel.Length : bytes.Length + offset)}&caption=Nameplate", new ByteArrayContent(bytes));
}
