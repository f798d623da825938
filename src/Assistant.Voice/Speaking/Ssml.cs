using System.Net;
using System.Text.RegularExpressions;

namespace Assistant.Voice.Speaking;

/// <summary>Text for the ear as SSML (W3C Speech Synthesis Markup Language): digits that stand apart are spelled, a little slower.</summary>
public static partial class Ssml
{
    public static string Of(string spoken)
    {
        var text = Spelled().Replace(WebUtility.HtmlEncode(spoken), m =>
            $"<prosody rate=\"88%\"><say-as interpret-as=\"tts:digits\">{m.Value}</say-as></prosody>");
        return $"<speak>{text}</speak>";
    }

    [GeneratedRegex(@"(?<![\w.])\d(?: \d)+(?![\w.]*\d)")]
    private static partial Regex Spelled();
}
