namespace Assistant.Faults;

/// <summary>The machine's clock goes back an hour in the middle of a visit (Debian package libfaketime): the order is that of what was said, and a reminder comes once.</summary>
internal static class ClockSetBack
{
    private const string Visit = "visit-clock-back";

    private const string Library = "/usr/lib/x86_64-linux-gnu/faketime/libfaketimeMT.so.1";

    public static async Task<string> RunAsync()
    {
        Check.That(File.Exists(Library), "The package libfaketime is wanted: apt-get install libfaketime.");
        var data = Directory.CreateTempSubdirectory("coldwalk-clock-");
        var clock = Path.Combine(data.FullName, "clock");
        await File.WriteAllTextAsync(clock, "+0");
        try
        {
            var acknowledged = new List<string>();
            using (var program = await Serving.StartAsync(
                data.FullName, "", own: false, ("LD_PRELOAD", Library), ("FAKETIME_TIMESTAMP_FILE", clock), ("FAKETIME_NO_CACHE", "1"), ("FAKETIME_DONT_FAKE_MONOTONIC", "1")))
            {
                await program.PostAsync("api/visits", new { id = Visit, site = "Invented creamery" });
                await SayAsync(program, acknowledged, "box 9 C", "remind me in 30 min to look at the coil", "box 10 C");
                var before = await program.VisitAsync(Visit);
                await File.WriteAllTextAsync(clock, "-3600");
                await SayAsync(program, acknowledged, "box 11 C", "setpoint 4 C", "why");
                Check.That((await DueAsync(program)).Count == 0, "the reminder came an hour early");
                var view = await program.VisitAsync(Visit);
                Check.That(view["turns"]!.AsArray().Select(t => (string)t!["id"]!).SequenceEqual(acknowledged), "the order is not that of what was said");
                Check.That(Box(view).Contains("11", StringComparison.Ordinal), $"box {Box(before)} before, {Box(view)} after the clock went back and 11 was said");
                await File.WriteAllTextAsync(clock, "+1860");
                var due = await DueAsync(program);
                Check.That(due.Count == 1, $"{due.Count} reminders after the half hour");
                Check.That((await DueAsync(program)).Count == 0, "the reminder came twice");
            }

            return $"{acknowledged.Count} messages in the order they were said, the last box reading counts, the reminder came once. {await Check.VerifiedAsync(data.FullName)}";
        }
        finally
        {
            data.Delete(recursive: true);
        }
    }

    private static async Task SayAsync(Serving program, List<string> acknowledged, params string[] texts)
    {
        foreach (var text in texts)
        {
            var id = $"message-{acknowledged.Count:00000}";
            var (status, body) = await program.PostAsync($"api/visits/{Visit}/messages", new { id, by = "Kim", text });
            Check.That(status == 200, $"{text}: {status} {body}");
            acknowledged.Add(id);
        }
    }

    private static async Task<System.Text.Json.Nodes.JsonArray> DueAsync(Serving program)
    {
        var (status, body) = await program.PostAsync($"api/visits/{Visit}/reminders", new { });
        Check.That(status == 200, $"reminders: {status} {body}");
        return body!.AsArray();
    }

    private static string Box(System.Text.Json.Nodes.JsonNode view) =>
        view["readings"]!.AsArray().First(r => (string?)r!["fact"] == "box_temperature")!.ToJsonString();
}
