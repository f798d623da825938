using System.Text;

namespace Assistant.EndToEnd.Tests.Guards;

/// <summary>Requests that no client of ours would send, each told by its number alone: broken JSON, deep nesting, wrong types, control characters, long and binary bodies, ids that are none.</summary>
internal static class HostileRequests
{
    /// <summary>Every endpoint there is; {v} stands for a visit that is there or not, {p} for anything.</summary>
    public static readonly string[] Endpoints =
    [
        "GET /", "GET /{p}", "GET /app.css", "GET /sw.js", "GET /health/{p}", "GET /api/start", "POST /api/visits", "GET /api/visits/{v}", "POST /api/visits/{v}/messages",
        "POST /api/visits/{v}/reminders", "GET /api/visits/{v}/pictures/{p}", "POST /api/visits/{v}/pictures/{p}", "GET /visits/{v}/pictures/{p}.jpg",
        "GET /visits/{v}/report.html", "GET /visits/{v}/report.json", "GET /api/visits/{v}/plots", "GET /visits/{v}/plots/{p}.svg",
        "POST /api/visits/{v}/report-link", "GET /r/{p}", "GET /r/{p}/report.pdf", "GET /tables.json", "GET /api/facts", "GET /api/search", "GET /api/units/{p}",
        "GET /units/{p}/label", "GET /visits/{v}/link.svg", "GET /api/visits/{v}/share", "POST /api/join", "POST /api/messages", "POST /text/inbound", "GET /text/report",
    ];

    private static readonly string[] Keys =
        ["id", "by", "site", "assetId", "refrigerant", "units", "demo", "text", "answers", "ago", "code", "type", "from", "conversation", "channelId", "serviceUrl", "recipient", "attachments", "value", "entities", "key", "time", "charset", "offset", "size", "q"];

    private static readonly string[] Words =
        ["visit-0001", "\u0000", "../../etc/passwd", "'; DROP TABLE events;--", "<script>alert(1)</script>", "R404A", "message", "us", "-1", "1e308", "NaN", "117 psig", "\u202e\u200f", "\ud83e\udd76", "%00%ff", "{{7*7}}", "true", "http://127.0.0.1:1/", "2026-13-45T99:99:99Z"];

    /// <param name="visit">A visit that is there.</param>
    public static HttpRequestMessage Make(string endpoint, int number, string visit)
    {
        var random = new Random(HashCode(endpoint) ^ number);
        var (method, template) = (endpoint.Split(' ')[0], endpoint.Split(' ')[1]);
        var path = template.Replace("{v}", random.Next(3) > 0 ? visit : Uri.EscapeDataString(Text(random)), StringComparison.Ordinal)
            .Replace("{p}", Uri.EscapeDataString(Text(random)), StringComparison.Ordinal);
        var query = random.Next(2) == 0 ? "" : "?" + string.Join('&', Enumerable.Range(0, random.Next(1, 5)).Select(_ => $"{Pick(random, Keys)}={Uri.EscapeDataString(Text(random))}"));
        var isOddMethod = random.Next(20) == 0;
        var request = new HttpRequestMessage(isOddMethod ? new("PATCH") : new(method), new Uri(path + query, UriKind.Relative));
        if (method == "POST" || isOddMethod)
        {
            request.Content = new ByteArrayContent(Body(random));
            request.Content.Headers.TryAddWithoutValidation("Content-Type", Pick(random, ["application/json", "application/json; charset=utf-7", "text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x", "x"]));
        }

        if (random.Next(8) == 0)
        {
            request.Headers.TryAddWithoutValidation(Pick(random, ["Cookie", "Authorization", "Range", "If-None-Match", "Accept-Encoding", "Origin", "X-Forwarded-For"]), "Bearer coldwalk_=" + random.Next());
        }

        return request;
    }

    private static byte[] Body(Random random)
    {
        switch (random.Next(8))
        {
            case 0:
                var bytes = new byte[random.Next(0, 600)];
                random.NextBytes(bytes);
                return bytes;
            case 1:
                return Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("{\"a\":[", random.Next(1, 3000))));
            case 2:
                return Encoding.UTF8.GetBytes($"{{\"id\":\"visit-0001\",\"text\":\"{new string('x', random.Next(0, 30_000))}\"}}");
            default:
                var json = $"{{{string.Join(',', Enumerable.Range(0, random.Next(0, 9)).Select(_ => $"\"{Pick(random, Keys)}\":{Value(random, 0)}"))}}}";
                var body = Encoding.UTF8.GetBytes(json);
                if (random.Next(3) == 0 && body.Length > 2)
                {
                    body[random.Next(body.Length)] = (byte)random.Next(256);
                }

                return body;
        }
    }

    private static string Value(Random random, int depth) => random.Next(depth > 3 ? 5 : 7) switch
    {
        0 => "null",
        1 => random.Next() + (random.Next(2) == 0 ? ".5e99" : ""),
        2 => "true",
        3 => "\"visit-0001\"",
        4 => System.Text.Json.JsonSerializer.Serialize(Text(random)),
        5 => $"[{Value(random, depth + 1)},{Value(random, depth + 1)}]",
        _ => $"{{\"{Pick(random, Keys)}\":{Value(random, depth + 1)},\"$type\":\"x\"}}",
    };

    private static string Text(Random random) => random.Next(4) switch
    {
        0 => Pick(random, Words),
        1 => Pick(random, Words) + Pick(random, Words),
        2 => new string((char)random.Next(1, 0xD7FF), random.Next(1, 70)),
        _ => $"{random.Next():x8}-{random.Next():x8}",
    };

    private static string Pick(Random random, string[] from) => from[random.Next(from.Length)];

    // The same on every run: string's own is not.
    private static int HashCode(string text) => text.Aggregate(17, (hash, letter) => unchecked((hash * 31) + letter));
}
