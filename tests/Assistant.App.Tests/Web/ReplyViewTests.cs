using System.Collections.Immutable;
using Assistant.App.Web;
using Assistant.Dialogue.Replies;
using Assistant.Trade;
using Assistant.Trade.Cautions;

namespace Assistant.App.Tests.Web;

public class ReplyViewTests
{
    [Fact]
    public void Every_caution_reaches_the_page_in_its_full_words_however_many_come_at_once()
    {
        var cautions = Enum.GetValues<CautionCode>().Select(c => new SpokenCaution(Codes.Of(c), new($"{c} in full.", "Short."))).ToImmutableArray();

        var view = ReplyView.Of(new(new(new string('x', 5_000), "x"), [], cautions, new("What now?", "Now?"), [], null, [], null, []));

        Assert.Equal(cautions.Select(c => (c.Code, c.Text.Full)), view.Cautions.Select(c => (c.Code, c.Text)));
        Assert.Equal("What now?", view.Ask);
    }
}
