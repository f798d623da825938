using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Assistant.Channels.Shaping;
using Assistant.Dialogue.Replies;

namespace Assistant.App.Talk;

/// <summary>One turn of a script as one JSON object: every key always there, null or empty where there is nothing.</summary>
/// <param name="In">What was said; null for a reminder that fell due by itself.</param>
/// <param name="Asks">The fact now asked for, or null.</param>
/// <param name="Verdicts">As they stand now, without the ruled-out.</param>
/// <param name="Cautions">The codes spoken this turn.</param>
internal sealed record ScriptTurn(
    string? In, string? By, string Say, string? Asks, string? Walk, string? Stop, string? Place, IReadOnlyList<Verdict> Verdicts, IReadOnlyList<string> Cautions)
{
    private static readonly ScriptJson Json = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        // Degrees and umlauts stay readable: the output goes to a file or a pipe, never into a page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    public static ScriptTurn Of(string? heard, string? by, Reply reply) => new(
        heard,
        by,
        ReplyShaping.TerminalText(reply),
        reply.AskedFact,
        reply.Walk?.Walk,
        reply.Walk?.Stop,
        reply.Walk?.Place,
        reply.Verdicts,
        [.. reply.Cautions.Select(c => c.Code)]);

    public string ToJson() => JsonSerializer.Serialize(this, Json.ScriptTurn);

    /// <summary>The same for a person to read.</summary>
    public string ToText() => In is null ? $"{Say}\n" : $"> {(By == "technician" ? "" : $"@{By} ")}{In}\n{Say}\n";
}

[JsonSerializable(typeof(ScriptTurn))]
internal sealed partial class ScriptJson : JsonSerializerContext;
