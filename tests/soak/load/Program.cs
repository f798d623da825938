using Assistant.Load;

Console.WriteLine($"{Machine.Cores} cores, {Machine.Load} - {DateTime.UtcNow:yyyy-MM-dd HH:mm} UTC");
return args switch
{
    ["echo", var port] => await EchoBot.RunAsync(int.Parse(port)),
    ["turn"] => TurnLoad.Run(),
    ["http"] => await HttpLoad.RunAsync(seconds: 3, rounds: 12),
    ["http", var seconds] => await HttpLoad.RunAsync(int.Parse(seconds), rounds: 12),
    ["start"] => await StartLoad.RunAsync(7),
    ["memory", var visits] => await MemoryLoad.RunAsync(int.Parse(visits)),
    ["report"] => await ReportLoad.RunAsync(),
    ["all"] => await AllAsync(),
    _ => Help(),
};

static int Help()
{
    Console.WriteLine("turn | http [SECONDS] | start | memory VISITS | report | all");
    return 2;
}

// About five minutes. What is missed is told at the end, and does not keep the rest from being measured.
static async Task<int> AllAsync()
{
    var missed = new List<string>();
    foreach (var (name, run) in new (string, Func<Task<int>>)[]
    {
        ("turn", () => Task.FromResult(TurnLoad.Run())),
        ("start", () => StartLoad.RunAsync(7)),
        ("http", () => HttpLoad.RunAsync(seconds: 3, rounds: 12)),
        ("memory 10000", () => MemoryLoad.RunAsync(10_000)),
        ("report", ReportLoad.RunAsync),
    })
    {
        Console.WriteLine($"-- {name}");
        if (await run() != 0)
        {
            missed.Add(name);
        }
    }

    Console.WriteLine(missed.Count == 0 ? "every bar is met" : $"missed: {string.Join(", ", missed)}");
    return missed.Count;
}
