using System.Text;

namespace Assistant.App.Web;

/// <summary>The fields of a gateway's call, from its address and its form. Their bytes are read in the charset the call names: a gateway hands on what the phone sent.</summary>
internal sealed class GatewayFields
{
    private readonly Dictionary<string, byte[]> fields = new(StringComparer.Ordinal);

    public static async Task<GatewayFields> ReadAsync(HttpRequest request, CancellationToken cancellation)
    {
        var read = new GatewayFields();
        read.Take(request.QueryString.Value?.TrimStart('?') ?? "");
        if (request.ContentType?.StartsWith("application/x-www-form-urlencoded", StringComparison.OrdinalIgnoreCase) == true)
        {
            using var body = new StreamReader(request.Body, Encoding.Latin1);
            read.Take(await body.ReadToEndAsync(cancellation));
        }

        return read;
    }

    /// <summary>The field's text, or nothing where it is not there.</summary>
    public string Text(string name) => !fields.TryGetValue(name, out var bytes) ? "" : (name == "text" ? Charset : Encoding.UTF8).GetString(bytes);

    private Encoding Charset => (fields.TryGetValue("charset", out var named) ? Encoding.ASCII.GetString(named).ToUpperInvariant() : "") switch
    {
        "UTF-16BE" or "UCS-2" or "UCS2" => Encoding.BigEndianUnicode,
        "ISO-8859-1" or "LATIN1" or "WINDOWS-1252" => Encoding.Latin1,
        _ => Encoding.UTF8,
    };

    private void Take(string encoded)
    {
        foreach (var pair in encoded.Split('&', StringSplitOptions.RemoveEmptyEntries))
        {
            var at = pair.IndexOf('=', StringComparison.Ordinal);
            fields[at < 0 ? pair : pair[..at]] = Decoded(at < 0 ? "" : pair[(at + 1)..]);
        }
    }

    private static byte[] Decoded(string text)
    {
        var bytes = new List<byte>(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '%' && i + 2 < text.Length && char.IsAsciiHexDigit(text[i + 1]) && char.IsAsciiHexDigit(text[i + 2]))
            {
                bytes.Add(Convert.ToByte(text.Substring(i + 1, 2), 16));
                i += 2;
            }
            else
            {
                bytes.AddRange(text[i] == '+' ? [(byte)' '] : Encoding.UTF8.GetBytes(text[i].ToString()));
            }
        }

        return [.. bytes];
    }
}
