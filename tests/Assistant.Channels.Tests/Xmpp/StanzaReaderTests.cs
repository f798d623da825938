using System.Text;
using Assistant.Channels.Xmpp.Wire;
using CsCheck;

namespace Assistant.Channels.Tests.Xmpp;

public class StanzaReaderTests
{
    private const string Beginning = "<?xml version='1.0'?><stream:stream xmlns='jabber:component:accept' xmlns:stream='http://etherx.jabber.org/streams' id='s1' from='coldwalk.chat.example'>";
    private const string End = "</stream:stream>";

    [Fact]
    public async Task Stanzas_come_one_by_one_as_they_were_sent()
    {
        var read = await ReadAsync("<message id='1'><body>suction 14 &lt; 20 &amp; falling</body></message> \n <presence id='2'/>");

        Assert.Equal(["1", "2"], read.Ids);
        Assert.Equal("suction 14 < 20 & falling", read.FirstBody);
    }

    [Fact]
    public void However_the_bytes_are_cut_on_the_way_the_same_stanzas_come() =>
        Gen.Int[1, 40].List[1, 60].Sample(cuts =>
        {
            var read = ReadAsync("<message id='1'><body>böx 47 °F</body></message><iq id='2'><ping xmlns='urn:xmpp:ping'/></iq><presence id='3'/>", cuts).GetAwaiter().GetResult();
            return read.Ids is ["1", "2", "3"] && read.FirstBody == "böx 47 °F";
        });

    [Theory]
    [InlineData("<!DOCTYPE stream [<!ENTITY a 'b'>]>", "not-well-formed")]
    [InlineData("<message id='1'><body>&a;</body></message>", "not-well-formed")]
    [InlineData("<message id='1'><body>", null)]
    [InlineData("<message id='1'></body></message>", "not-well-formed")]
    [InlineData("<message id='1' id='2'/>", "not-well-formed")]
    [InlineData("<message id='1'>\u0001</message>", "not-well-formed")]
    [InlineData("<!-- a comment -->", "restricted-xml")]
    [InlineData("<?run it?>", "restricted-xml")]
    [InlineData("<message id='1'><!-- inside --></message>", "restricted-xml")]
    public async Task What_may_not_stand_in_a_stream_ends_it(string content, string? condition)
    {
        var broken = await Assert.ThrowsAsync<StreamBrokenException>(() => ReadAsync(content, end: ""));

        Assert.Equal(condition, broken.Condition);
    }

    [Fact]
    public async Task A_document_type_before_the_stream_is_refused()
    {
        using var reader = new StanzaReader(new MemoryStream(Encoding.UTF8.GetBytes("<!DOCTYPE a SYSTEM 'file:///etc/passwd'>" + Beginning)));

        Assert.Equal("not-well-formed", (await Assert.ThrowsAsync<StreamBrokenException>(reader.OpenAsync)).Condition);
    }

    [Fact]
    public async Task A_stanza_too_large_is_left_out_and_the_next_one_comes()
    {
        var large = new string('9', StanzaReader.LargestStanza + 1);

        var read = await ReadAsync($"<message id='1'><body>{large}</body></message><message id='2'><body a='{large}'/></message><message id='3'/>");

        Assert.Equal(["3"], read.Ids);
        Assert.Equal(2, read.LeftOut);
    }

    [Fact]
    public async Task A_stanza_too_deep_is_left_out_and_the_next_one_comes()
    {
        var deep = string.Concat(Enumerable.Repeat("<a>", 30)) + string.Concat(Enumerable.Repeat("</a>", 30));
        var allowed = string.Concat(Enumerable.Repeat("<a>", 20)) + string.Concat(Enumerable.Repeat("</a>", 20));

        var read = await ReadAsync($"<message id='1'>{deep}</message><message id='2'>{allowed}</message>");

        Assert.Equal(["2"], read.Ids);
    }

    [Fact]
    public async Task A_stanza_without_end_ends_the_stream_before_it_fills_the_memory()
    {
        using var endless = new EndlessStanza(Encoding.UTF8.GetBytes(Beginning + "<message><body>"));
        using var reader = new StanzaReader(endless);
        await reader.OpenAsync();

        var broken = await Assert.ThrowsAsync<StreamBrokenException>(reader.ReadAsync);

        Assert.Equal("policy-violation", broken.Condition);
        Assert.InRange(endless.Given, StanzaReader.LargestRun, StanzaReader.LargestRun + (1024 * 1024));
    }

    private static async Task<(string[] Ids, string? FirstBody, int LeftOut)> ReadAsync(string content, List<int>? cuts = null, string end = End)
    {
        using var reader = new StanzaReader(new CutStream(Encoding.UTF8.GetBytes(Beginning + content + end), cuts ?? [int.MaxValue]));
        Assert.Equal("s1", await reader.OpenAsync());
        var stanzas = new List<System.Xml.Linq.XElement>();
        while (await reader.ReadAsync() is { } stanza)
        {
            stanzas.Add(stanza);
        }

        return ([.. stanzas.Select(s => (string)s.Attribute("id")!)], (string?)stanzas.FirstOrDefault()?.Element(XmppNames.Component + "body"), reader.LeftOut);
    }

    /// <summary>Gives its bytes in pieces of the sizes told, over and over.</summary>
    private sealed class CutStream(byte[] bytes, List<int> cuts) : MemoryStream(bytes)
    {
        private int piece;

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
            base.ReadAsync(buffer[..Math.Min(buffer.Length, cuts[piece++ % cuts.Count])], cancellationToken);
    }

    private sealed class EndlessStanza(byte[] beginning) : MemoryStream(beginning)
    {
        public long Given { get; private set; }

        public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            var got = await base.ReadAsync(buffer, cancellationToken);
            if (got == 0)
            {
                buffer.Span.Fill((byte)'9');
                got = buffer.Length;
            }

            Given += got;
            return got;
        }
    }
}
