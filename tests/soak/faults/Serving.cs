using System.Diagnostics;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Assistant.Load;

namespace Assistant.Faults;

/// <summary>The program serving under a shell line that prepares what is wrong with its machine; stopped at the end.</summary>
internal sealed partial class Serving : IDisposable
{
    private readonly Process process;

    private Serving(Process process, string data, Uri address)
    {
        (this.process, Data) = (process, $"/proc/{process.Id}/root{data}");
        Client = new() { BaseAddress = address };
    }

    /// <summary>Its folder of records as it sees it itself: what it has mounted there is seen by nobody else.</summary>
    public string Data { get; }

    public HttpClient Client { get; }

    /// <param name="prepare">What the shell does before it becomes the program, with the folder of records as $DATA.</param>
    /// <param name="own">Whether it has a view of its own of what is mounted.</param>
    public static async Task<Serving> StartAsync(string data, string prepare, bool own, params (string Key, string Value)[] environment)
    {
        string[] shell = ["sh", "-ec", $"{prepare}\nexec dotnet \"$PROGRAM\" serve --port 0 --data \"$DATA\""];
        string[] line = own ? ["unshare", "--map-root-user", "--mount", .. shell] : shell;
        var start = new ProcessStartInfo(line[0], line[1..]) { RedirectStandardOutput = true, Environment = { ["DATA"] = data, ["PROGRAM"] = Machine.Program } };
        foreach (var (key, value) in environment)
        {
            start.Environment[key] = value;
        }

        var process = Process.Start(start)!;
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        while (await process.StandardOutput.ReadLineAsync(patience.Token) is { } said)
        {
            if (AddressPattern().Match(said) is { Success: true } found)
            {
                return new(process, data, new(found.Value));
            }
        }

        throw new InvalidOperationException("The program ended before it served.");
    }

    /// <summary>Opens a visit, says something in it, or whatever the path is for.</summary>
    public async Task<(int Status, JsonNode? Body)> PostAsync(string path, object body)
    {
        using var answer = await Client.PostAsJsonAsync(new Uri(path, UriKind.Relative), body);
        return ((int)answer.StatusCode, JsonNode.Parse(await answer.Content.ReadAsStringAsync()));
    }

    public async Task<JsonNode> VisitAsync(string id) => (await Client.GetFromJsonAsync<JsonNode>(new Uri($"api/visits/{id}", UriKind.Relative)))!;

    public void Dispose()
    {
        Client.Dispose();
        process.Kill();
        process.WaitForExit();
        process.Dispose();
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+/?")]
    private static partial Regex AddressPattern();
}
