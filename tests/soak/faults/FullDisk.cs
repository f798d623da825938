namespace Assistant.Faults;

/// <summary>The disk fills to its last byte in the middle of a visit, and is cleared again: each refusal is one line, and nothing that was acknowledged is lost.</summary>
internal static class FullDisk
{
    private const string Visit = "visit-full-disk";

    private const int Most = 5000;

    public static async Task<string> RunAsync()
    {
        var data = Directory.CreateTempSubdirectory("coldwalk-full-");
        using var kept = new Kept();
        var acknowledged = new List<string>();
        using (var program = await Serving.StartAsync(data.FullName, "mount -t tmpfs -o size=24m tmpfs \"$DATA\"", own: true))
        {
            Check.That((await program.PostAsync("api/visits", new { id = Visit, site = "Invented creamery" })).Status == 200, "not opened");
            await SayAsync(program, acknowledged, until: 20);
            var filler = Path.Combine(program.Data, "filler");
            Fill(filler);
            var refused = await SayAsync(program, acknowledged, until: Most);
            Check.That(refused is { Status: 503 }, $"{acknowledged.Count} messages on a full disk, and then {refused}");
            Check.That(refused.Line.Contains("disk", StringComparison.OrdinalIgnoreCase), refused.Line);
            var opened = await program.PostAsync("api/visits", new { id = "visit-second", site = "Invented dairy" });
            Check.That(opened.Status == 503, $"opened on a full disk: {opened.Status} {opened.Body}");
            var (shown, full) = ((await program.VisitAsync(Visit))["turns"]!.AsArray().Count, acknowledged.Count);
            Check.That(shown > 0, "the visit is not shown");

            File.Delete(filler);
            Check.That(await SayAsync(program, acknowledged, until: full + 20) is { Status: 200 }, "not taken after the disk was cleared");
            var ids = (await program.VisitAsync(Visit))["turns"]!.AsArray().Select(t => (string)t!["id"]!).ToList();
            Check.That(acknowledged.TakeLast(ids.Count).SequenceEqual(ids.TakeLast(acknowledged.Count)), "the visit does not hold what was acknowledged, each once and in its order");
            kept.Copy(program.Data);
            data.Delete();
            var verified = await Check.VerifiedAsync(kept.Path);
            return $"{full} answers acknowledged until there was no room, then \"{refused.Line}\"; the visit is still shown; 20 more after room was made, the refused one among them. {verified}";
        }
    }

    // Says answers until one is refused; the refused one keeps its id for the next time.
    private static async Task<(int Status, string Line)> SayAsync(Serving program, List<string> acknowledged, int until)
    {
        while (acknowledged.Count < until)
        {
            var id = $"message-{acknowledged.Count:00000}";
            var (status, body) = await program.PostAsync($"api/visits/{Visit}/messages", new { id, by = "Kim", text = $"box {8 + (acknowledged.Count % 3)} C" });
            if (status != 200)
            {
                return (status, (string?)body?["error"] ?? "");
            }

            acknowledged.Add(id);
        }

        return (200, "");
    }

    private static void Fill(string path)
    {
        using var file = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
        for (var size = 1 << 20; size > 0; size /= 2)
        {
            try
            {
                while (true)
                {
                    file.Write(new byte[size]);
                }
            }
            catch (IOException)
            {
                // No room for a piece so large.
            }
        }
    }
}
