using System.Diagnostics;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Assistant.EndToEnd.Tests.Fixtures;

/// <summary>The program serving on a free loopback port, with records of its own; stopped and cleared away at the end.</summary>
public sealed partial class AppServer : IAsyncLifetime, IDisposable
{
    private Process? process;

    public string Data { get; } = Directory.CreateTempSubdirectory("coldwalk-e2e-").FullName;

    public Uri Address { get; private set; } = new("http://127.0.0.1/");

    public HttpClient Client { get; private set; } = new();

    public async Task InitializeAsync()
    {
        process = AppProcess.Start(["serve", "--port", $"{(Address.IsDefaultPort ? 0 : Address.Port)}", "--data", Data]);
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        var line = await process.StandardOutput.ReadLineAsync(patience.Token)
            ?? throw new InvalidOperationException("The program ended before it served.");
        Address = new(AddressPattern().Match(line).Value);
        Client.Dispose();
        Client = new() { BaseAddress = Address };
    }

    /// <summary>Posts JSON that must be taken.</summary>
    public async Task<JsonNode> PostAsync(string path, object body)
    {
        using var response = await Client.PostAsJsonAsync(path, body);
        Assert.True(response.IsSuccessStatusCode, await response.Content.ReadAsStringAsync());
        return (await response.Content.ReadFromJsonAsync<JsonNode>())!;
    }

    /// <summary>Starts again after a kill, under the same address and on the same records.</summary>
    public Task StartAgainAsync() => InitializeAsync();

    /// <summary>As a power cut does it: no chance to finish anything (SIGKILL).</summary>
    public async Task KillAsync()
    {
        process!.Kill();
        await process.WaitForExitAsync();
        process.Dispose();
        process = null;
    }

    public async Task DisposeAsync()
    {
        if (process is not null)
        {
            await KillAsync();
        }

        Dispose();
    }

    public void Dispose()
    {
        Client.Dispose();
        process?.Dispose();
        if (Directory.Exists(Data))
        {
            Directory.Delete(Data, recursive: true);
        }
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+/")]
    private static partial Regex AddressPattern();
}
