using System.Xml;
using System.Xml.Linq;

namespace Assistant.Channels.Xmpp.Wire;

/// <summary>
/// Reads stanzas off a stream. No document type, no comment, no processing instruction (RFC 6120, section 11.1); a stanza that is too large
/// or too deep is read over without being kept, and one past all measure ends the stream.
/// </summary>
internal sealed class StanzaReader : IDisposable
{
    /// <summary>Stanzas of more characters are left out. A reading and what a server adds to it has a few thousand.</summary>
    public const int LargestStanza = 64 * 1024;

    /// <summary>Elements within elements.</summary>
    public const int DeepestStanza = 24;

    /// <summary>More bytes without a whole stanza end the stream: well above what servers take from anybody.</summary>
    public const int LargestRun = 4 * 1024 * 1024;

    private readonly MeteredStream metered;
    private readonly XmlReader reader;

    public StanzaReader(Stream stream)
    {
        metered = new(stream, LargestRun);
        reader = XmlReader.Create(metered, new()
        {
            Async = true,
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            IgnoreComments = false,
            ConformanceLevel = ConformanceLevel.Document,
        });
    }

    /// <summary>How many stanzas were left out.</summary>
    public int LeftOut { get; private set; }

    /// <summary>The stream's beginning: its id.</summary>
    /// <exception cref="StreamBrokenException">It is none.</exception>
    public async Task<string> OpenAsync()
    {
        while (await NextAsync() && reader.NodeType != XmlNodeType.Element)
        {
            Allow();
        }

        if (reader.NodeType != XmlNodeType.Element || reader.LocalName != "stream" || reader.NamespaceURI != XmppNames.Stream.NamespaceName)
        {
            throw new StreamBrokenException("invalid-namespace", "the server did not open an XMPP stream");
        }

        return reader.GetAttribute("id") ?? "";
    }

    /// <summary>The next stanza that was not left out, or null at the stream's end.</summary>
    /// <exception cref="StreamBrokenException">What came is no XML, or not what may stand in a stream.</exception>
    public async Task<XElement?> ReadAsync()
    {
        while (await NextAsync())
        {
            Allow();
            if (reader is { NodeType: XmlNodeType.EndElement, Depth: 0 })
            {
                return null;
            }

            if (reader.NodeType == XmlNodeType.Element)
            {
                var stanza = await StanzaAsync();
                metered.Start();
                if (stanza is not null)
                {
                    return stanza;
                }

                LeftOut++;
            }
        }

        return null;
    }

    public void Dispose()
    {
        reader.Dispose();
        metered.Dispose();
    }

    private async Task<XElement?> StanzaAsync()
    {
        var (whole, size, isKept) = (Element(), 0, true);
        var (at, depth) = (whole, reader.IsEmptyElement ? 0 : 1);
        size += Size(whole);
        while (depth > 0)
        {
            if (!await NextAsync())
            {
                throw new StreamBrokenException(null, "the stream ended within a stanza");
            }

            Allow();
            switch (reader.NodeType)
            {
                case XmlNodeType.Element:
                    var child = isKept ? Element() : null;
                    size += child is null ? 0 : Size(child);
                    depth += reader.IsEmptyElement ? 0 : 1;
                    isKept = isKept && size <= LargestStanza && depth <= DeepestStanza;
                    if (isKept)
                    {
                        at.Add(child);
                        at = reader.IsEmptyElement ? at : child!;
                    }

                    break;
                case XmlNodeType.EndElement:
                    depth--;
                    at = isKept && depth > 0 ? at.Parent! : at;
                    break;
                default:
                    // The value itself would be read on without the line being let go meanwhile.
                    var text = await TextAsync();
                    size += text.Length;
                    isKept = isKept && size <= LargestStanza;
                    if (isKept)
                    {
                        at.Add(new XText(text));
                    }

                    break;
            }
        }

        return isKept ? whole : null;
    }

    private XElement Element()
    {
        var element = new XElement(XName.Get(reader.LocalName, reader.NamespaceURI));
        while (reader.MoveToNextAttribute())
        {
            if (reader.NamespaceURI != XNamespace.Xmlns.NamespaceName)
            {
                element.SetAttributeValue(XName.Get(reader.LocalName, reader.NamespaceURI), reader.Value);
            }
        }

        reader.MoveToElement();
        return element;
    }

    private static int Size(XElement element) => element.Name.LocalName.Length + element.Attributes().Sum(a => a.Name.LocalName.Length + a.Value.Length);

    private Task<bool> NextAsync() => CheckedAsync(reader.ReadAsync);

    private Task<string> TextAsync() => CheckedAsync(reader.GetValueAsync);

    private async Task<T> CheckedAsync<T>(Func<Task<T>> read)
    {
        try
        {
            return await read();
        }
        catch (XmlException broken)
        {
            throw metered.IsAtEnd
                ? new StreamBrokenException(null, "the server closed the line", broken)
                : new StreamBrokenException("not-well-formed", $"what came is no XML ({broken.Message})", broken);
        }
    }

    private void Allow()
    {
        if (reader.NodeType is not (XmlNodeType.Element or XmlNodeType.EndElement or XmlNodeType.Text or XmlNodeType.CDATA
            or XmlNodeType.Whitespace or XmlNodeType.SignificantWhitespace or XmlNodeType.XmlDeclaration))
        {
            throw new StreamBrokenException("restricted-xml", $"the stream brought what must not be in it ({reader.NodeType})");
        }
    }
}
