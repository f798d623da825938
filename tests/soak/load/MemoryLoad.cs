namespace Assistant.Load;

/// <summary>What the program holds with so many visits open at once, each opened and spoken on over HTTP. The bar: 200 MB at the start, 1 GB with 10,000.</summary>
internal static class MemoryLoad
{
    private static readonly string[] Said = ["ok", "41", "36"];

    public static async Task<int> RunAsync(int visits)
    {
        using var program = await Served.ProgramAsync();
        using var first = await program.Client.GetAsync(new Uri("api/start", UriKind.Relative));
        var atStart = Machine.ResidentMegabytes(program.Process);
        var watch = System.Diagnostics.Stopwatch.StartNew();
        await Parallel.ForEachAsync(Enumerable.Range(0, visits), new ParallelOptions { MaxDegreeOfParallelism = 8 }, async (number, cancellation) =>
        {
            var visit = $"visit-{number:00000000}";
            await PostAsync(program, "api/visits", new { id = visit, site = $"Invented site {number}" }, cancellation);
            foreach (var (text, turn) in Said.Select((t, i) => (t, i)))
            {
                await PostAsync(program, $"api/visits/{visit}/messages", new { id = $"{visit}-{turn}", text }, cancellation);
            }
        });

        var held = Machine.ResidentMegabytes(program.Process);
        Console.WriteLine($"{atStart:0} MB at the start; {held:0} MB with {visits} visits open ({Machine.PeakMegabytes(program.Process):0} at the most), {(Said.Length + 1) * visits / watch.Elapsed.TotalSeconds:0} requests/s on the way; {Machine.Load}");
        return atStart < 200 && held < 1000 ? 0 : 1;
    }

    private static async Task PostAsync(Served program, string path, object body, CancellationToken cancellation)
    {
        using var answer = await program.Client.PostAsJsonAsync(new Uri(path, UriKind.Relative), body, cancellation);
        if (!answer.IsSuccessStatusCode)
        {
            throw new InvalidOperationException($"{path}: {answer.StatusCode} {await answer.Content.ReadAsStringAsync(cancellation)}");
        }
    }
}
