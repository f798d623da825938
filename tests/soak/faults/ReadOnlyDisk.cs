namespace Assistant.Faults;

/// <summary>The records lie on what can not be written: what is there is shown, and what is said is refused in one line.</summary>
internal static class ReadOnlyDisk
{
    private const string Visit = "visit-read-only";

    public static async Task<string> RunAsync()
    {
        var data = Directory.CreateTempSubdirectory("coldwalk-read-only-");
        try
        {
            using (var before = await Serving.StartAsync(data.FullName, "", own: false))
            {
                await before.PostAsync("api/visits", new { id = Visit, site = "Invented creamery" });
                Check.That((await before.PostAsync($"api/visits/{Visit}/messages", new { id = "message-00001", by = "Kim", text = "box 9 C" })).Status == 200, "not taken");
            }

            using var program = await Serving.StartAsync(data.FullName, "mount --bind \"$DATA\" \"$DATA\"\nmount -o remount,bind,ro \"$DATA\"", own: true);
            var (status, body) = await program.PostAsync($"api/visits/{Visit}/messages", new { id = "message-00002", by = "Kim", text = "box 10 C" });
            Check.That(status == 503, $"said on a read-only disk: {status} {body}");
            var turns = (await program.VisitAsync(Visit))["turns"]!.AsArray();
            Check.That(turns.Count(t => (string?)t!["id"] == "message-00001") == 1, "what was said before is not shown");
            return $"the visit is shown with what was said before; a message: \"{(string?)body?["error"]}\"";
        }
        finally
        {
            data.Delete(recursive: true);
        }
    }
}
