using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Assistant.EndToEnd.Tests.Fixtures;

/// <summary>The program serving on a free loopback port, with records of its own; stopped and cleared away at the end.</summary>
public sealed partial class AppServer : IAsyncLifetime, IDisposable
{
    private readonly string[] options;

    // The program writes while a test reads.
    private readonly ConcurrentQueue<string> errors = new();
    private Process? process;

    public AppServer()
        : this(Directory.CreateTempSubdirectory("coldwalk-e2e-").FullName, [])
    {
    }

    /// <param name="data">A folder of records, which goes away with the server.</param>
    /// <param name="options">Further options of serve.</param>
    internal AppServer(string data, string[] options) => (Data, this.options) = (data, options);

    public string Data { get; }

    /// <summary>What else the program is told by its environment.</summary>
    internal IReadOnlyDictionary<string, string>? Environment { get; init; }

    /// <summary>What it said on its error stream.</summary>
    internal string Errors => string.Concat(errors);

    public Uri Address { get; private set; } = new("http://127.0.0.1/");

    public HttpClient Client { get; private set; } = new();

    public async Task InitializeAsync()
    {
        process = AppProcess.Start(["serve", "--port", $"{(Address.IsDefaultPort ? 0 : Address.Port)}", "--data", Data, .. options], Environment);
        process.ErrorDataReceived += (_, line) => errors.Enqueue(line.Data + "\n");
        process.BeginErrorReadLine();
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        var line = await process.StandardOutput.ReadLineAsync(patience.Token)
            ?? throw new InvalidOperationException("The program ended before it served.");
        Address = new(AddressPattern().Match(line).Value);
        Client.Dispose();
        // The certificate of these tests is their own.
        Client = new(new HttpClientHandler { ServerCertificateCustomValidationCallback = HttpClientHandler.DangerousAcceptAnyServerCertificateValidator }) { BaseAddress = Address };
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

    [GeneratedRegex(@"https?://127\.0\.0\.1:\d+/")]
    private static partial Regex AddressPattern();
}
