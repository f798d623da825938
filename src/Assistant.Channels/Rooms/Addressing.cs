namespace Assistant.Channels.Rooms;

/// <summary>Words that begin with our name are said to us.</summary>
internal static class Addressing
{
    /// <summary>The words without the name before them, and whether it stood there: "Coldwalk: 47", "@coldwalk status".</summary>
    public static (string Text, bool IsToUs) Read(string body, string name)
    {
        var rest = body.AsSpan();
        var at = rest is ['@', ..] ? 1 : 0;
        if (name.Length == 0 || !rest[at..].StartsWith(name, StringComparison.OrdinalIgnoreCase))
        {
            return (body, false);
        }

        rest = rest[(at + name.Length)..];
        var isName = at > 0 ? rest.IsEmpty || !char.IsLetterOrDigit(rest[0]) : rest.IsEmpty || rest[0] is ':' or ',' or ';' or '.' or '!' or '?' or ' ';
        return isName ? (rest.TrimStart(":,;.!? ").ToString(), true) : (body, false);
    }
}
