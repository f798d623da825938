using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using Assistant.EndToEnd.Tests.Texts;
using Xunit.Abstractions;

namespace Assistant.EndToEnd.Tests.Guards;

/// <summary>Nothing that is sent makes the program fail inside, and it answers as before afterwards. How many a endpoint: COLDWALK_HOSTILE, and tests/soak/hostile.</summary>
public sealed class HostileRequestTests(ServerWithoutGateway served, ITestOutputHelper output) : IClassFixture<ServerWithoutGateway>
{
    private static readonly int Each = int.Parse(Environment.GetEnvironmentVariable("COLDWALK_HOSTILE") ?? "80", CultureInfo.InvariantCulture);

    [Fact]
    public async Task No_request_makes_it_fail_and_it_goes_on()
    {
        var visit = Guid.NewGuid().ToString();
        await OpenAsync(visit);
        var statuses = new ConcurrentDictionary<HttpStatusCode, int>();
        var failed = new ConcurrentBag<string>();
        foreach (var endpoint in HostileRequests.Endpoints)
        {
            await Parallel.ForEachAsync(Enumerable.Range(0, Each), new ParallelOptions { MaxDegreeOfParallelism = 16 }, async (number, cancellation) =>
            {
                using var request = HostileRequests.Make(endpoint, number, visit);
                using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
                patience.CancelAfter(TimeSpan.FromSeconds(60));
                using var response = await served.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, patience.Token);
                statuses.AddOrUpdate(response.StatusCode, 1, (_, n) => n + 1);
                if ((int)response.StatusCode >= 500)
                {
                    failed.Add($"{endpoint} #{number}: {(int)response.StatusCode} {await response.Content.ReadAsStringAsync(patience.Token)}");
                }
            });
        }

        output.WriteLine($"hostile: {Each} to each of {HostileRequests.Endpoints.Length} endpoints: {string.Join(", ", statuses.OrderBy(s => s.Key).Select(s => $"{s.Value} x {(int)s.Key}"))}");
        Assert.True(failed.IsEmpty, string.Join('\n', failed.Order(StringComparer.Ordinal).GroupBy(f => f.Split(" #")[0]).SelectMany(f => f.Take(3))));
        await OpenAsync(Guid.NewGuid().ToString());
        using var still = await served.Client.GetAsync(new Uri($"/api/visits/{visit}", UriKind.Relative));
        Assert.Equal(HttpStatusCode.OK, still.StatusCode);
    }

    private async Task OpenAsync(string visit)
    {
        using var opened = await served.Client.PostAsync(new Uri("/api/visits", UriKind.Relative), new StringContent($$"""{"id":"{{visit}}","demo":true}""", System.Text.Encoding.UTF8, "application/json"));
        Assert.Equal(HttpStatusCode.OK, opened.StatusCode);
    }
}
