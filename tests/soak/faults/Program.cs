using Assistant.Faults;
using Assistant.Load;

Console.WriteLine($"{Machine.Load} - {DateTime.UtcNow:yyyy-MM-dd HH:mm} UTC");
var all = new Dictionary<string, Func<Task<string>>>
{
    ["full-disk"] = FullDisk.RunAsync,
    ["read-only"] = ReadOnlyDisk.RunAsync,
    ["clock"] = ClockSetBack.RunAsync,
};
foreach (var name in args.Length > 0 ? args : [.. all.Keys])
{
    if (!all.TryGetValue(name, out var run))
    {
        Console.WriteLine($"There is no {name}: {string.Join(" | ", all.Keys)}");
        return 2;
    }

    Console.WriteLine($"{name}: {await run()}");
}

return 0;
