using Assistant.Records.Log;
using Assistant.Records.Storage.Sqlite;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Log;

/// <summary>The program that a crash test kills: appends to four visits without end and prints each append once it is acknowledged.</summary>
internal static class Appender
{
    public static async Task RunAsync(string path, string run)
    {
        await using var log = await EventLog.OpenAsync(new SqliteRecords(path));
        var output = TextWriter.Synchronized(Console.Out);
        await Task.WhenAll(Enumerable.Range(0, 4).Select(writer => AppendForeverAsync(log, $"run-{run}-{writer}", output)));
    }

    private static async Task AppendForeverAsync(EventLog log, string visit, TextWriter output)
    {
        await log.AppendAsync(Invented.FirstAppend(visit, visit));
        for (var version = 1; ; version += 2)
        {
            var pair = new[] { Invented.Heard($"first {version}"), Invented.Heard($"second {version}") };
            await log.AppendAsync(new(visit, version, pair) { Answer = new(Invented.Message($"{visit} {version}"), CountingEngine.Saying("taken")) });
            await output.WriteLineAsync($"{visit} {version + 2}");
            await output.FlushAsync();
        }
    }
}
