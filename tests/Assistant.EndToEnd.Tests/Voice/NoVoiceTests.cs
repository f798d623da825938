using System.Net;
using Assistant.EndToEnd.Tests.Fixtures;
using Assistant.EndToEnd.Tests.Page;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Voice;

/// <summary>Whatever voice lacks: one clear line, and the chat goes on.</summary>
[Collection(PhoneGroup.Name)]
public sealed class NoVoiceTests(Phone phone)
{
    [Fact]
    public async Task Without_a_microphone_or_leave_to_use_it_one_line_says_so_and_the_chat_goes_on()
    {
        var page = await TalkingPhone.AtFirstReadingAsync(await phone.NewPageAsync());

        await page.Locator("#voice-open").ClickAsync();

        await Assertions.Expect(page.Locator("#voice-note")).ToContainTextAsync("the chat goes on");
        await Assertions.Expect(page.Locator("#voice-said")).Not.ToBeEmptyAsync();
        await Phone.ShootAsync(page, "voice-no-microphone");
        await page.Locator("#voice-leave").ClickAsync();
        await Talk.SayAsync(page, "9");
    }

    [Fact]
    public async Task Where_the_program_can_not_hear_it_says_what_to_install()
    {
        // A library that is none stands before the installed one.
        var folder = Directory.CreateTempSubdirectory("coldwalk-no-hearing-");
        await File.WriteAllTextAsync(Path.Combine(folder.FullName, "libpocketsphinx.so.3"), "no library");
        await using var server = new OwnServer(new() { ["LD_LIBRARY_PATH"] = folder.FullName });
        await server.StartAsync();
        var page = await TalkingPhone.AtFirstReadingAsync(await phone.NewPageAsync(server: server.App));

        await page.Locator("#voice-open").ClickAsync();

        await Assertions.Expect(page.Locator("#voice-note")).ToHaveTextAsync(
            "Hearing is off: libpocketsphinx.so.3 is missing; install it with: apt-get install libpocketsphinx3 pocketsphinx-en-us. The chat works without it.");
        await Assertions.Expect(page.Locator("#voice-state")).ToHaveTextAsync("Voice is off");
        await page.Locator("#voice-leave").ClickAsync();
        await Talk.SayAsync(page, "9");
        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task Where_the_program_can_not_speak_the_words_stand_on_the_screen()
    {
        var dotnet = Path.GetDirectoryName(Environment.ProcessPath)!;
        await using var server = new OwnServer(new() { ["PATH"] = dotnet });
        await server.StartAsync();
        var page = await TalkingPhone.AtFirstReadingAsync(await phone.NewPageAsync(server: server.App));

        await page.Locator("#voice-open").ClickAsync();

        await Assertions.Expect(page.Locator("#voice-note")).ToHaveTextAsync("Speaking is off: espeak-ng is missing; install it with: apt-get install espeak-ng");
        await Assertions.Expect(page.Locator("#voice-said")).ToContainTextAsync("?");
    }

    [Theory]
    [InlineData("text/plain", "rate=16000", HttpStatusCode.UnsupportedMediaType)]
    [InlineData("application/octet-stream", "rate=5", HttpStatusCode.BadRequest)]
    public async Task What_is_no_sound_is_refused_in_one_line(string type, string query, HttpStatusCode code)
    {
        var id = Guid.NewGuid().ToString();
        await phone.Server.PostAsync("/api/visits", new { id, demo = true });
        using var body = new ByteArrayContent(new byte[200]);
        body.Headers.ContentType = new(type);

        using var response = await phone.Server.Client.PostAsync($"/api/visits/{id}/voice/{Guid.NewGuid()}/utterance?{query}", body);

        Assert.Equal(code, response.StatusCode);
        Assert.Contains("error", await response.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    /// <summary>A server in an environment of its own.</summary>
    private sealed class OwnServer(Dictionary<string, string> environment) : IAsyncDisposable
    {
        public AppServer App { get; } = new(Directory.CreateTempSubdirectory("coldwalk-e2e-").FullName, []) { Environment = environment };

        public Task StartAsync() => App.InitializeAsync();

        public async ValueTask DisposeAsync() => await App.DisposeAsync();
    }
}
