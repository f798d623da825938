using Assistant.Load;

Console.WriteLine($"{Machine.Cores} cores, {Machine.Load} - {DateTime.UtcNow:yyyy-MM-dd HH:mm} UTC");
return args switch
{
    ["echo", var port] => await EchoBot.RunAsync(int.Parse(port)),
    ["turn"] => TurnLoad.Run(),
    ["http"] => await HttpLoad.RunAsync(seconds: 10, rounds: 3),
    ["http", var seconds] => await HttpLoad.RunAsync(int.Parse(seconds), rounds: 3),
    ["start"] => await StartLoad.RunAsync(7),
    ["memory", var visits] => await MemoryLoad.RunAsync(int.Parse(visits)),
    ["report"] => await ReportLoad.RunAsync(),
    _ => Help(),
};

static int Help()
{
    Console.WriteLine("turn | http [SECONDS] | start | memory VISITS | report");
    return 2;
}
