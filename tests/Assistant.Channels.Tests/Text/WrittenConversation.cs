using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Replies;

namespace Assistant.Channels.Tests.Text;

/// <summary>The replies of a written conversation, played on the real dialogue.</summary>
internal static class WrittenConversation
{
    public static IEnumerable<(string Said, Reply Reply)> Replies(string path)
    {
        var lines = File.ReadAllLines(path);
        var units = lines.FirstOrDefault(l => l.StartsWith("units:", StringComparison.Ordinal))?[6..].Trim() ?? "us";
        var site = lines.FirstOrDefault(l => l.StartsWith("site:", StringComparison.Ordinal))?[5..].Trim() ?? "Invented Dairy";
        var record = lines.Where(l => l.StartsWith("record:", StringComparison.Ordinal)).Select(l => l[7..].Split('=', 2)).ToImmutableDictionary(p => p[0].Trim(), p => p[1].Trim());
        var now = new DateTimeOffset(2026, 7, 14, 13, 0, 0, TimeSpan.Zero);
        var turn = Spoken.Engine.Open(new(site, null, units, record) { At = now, By = "ada" });
        for (var i = 0; i < lines.Length; i++)
        {
            if (lines[i].StartsWith("> ", StringComparison.Ordinal))
            {
                var said = lines[i][2..];
                now += TimeSpan.FromMinutes(1);
                turn = Spoken.Engine.Take(turn.After, new(i.ToString(CultureInfo.InvariantCulture), "sms", "c", "ada", now, said.StartsWith('@') ? said[(said.IndexOf(' ', StringComparison.Ordinal) + 1)..] : said));
                yield return ($"{Path.GetFileName(path)}: {said}", turn.Reply);
            }
        }
    }
}
