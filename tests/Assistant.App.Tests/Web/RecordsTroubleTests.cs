using Assistant.App.Web;
using Assistant.Records.Storage;

namespace Assistant.App.Tests.Web;

public class RecordsTroubleTests
{
    public static TheoryData<RecordsFault> Faults { get; } = new(Enum.GetValues<RecordsFault>().Except([RecordsFault.Refused, RecordsFault.Contended]));

    [Theory]
    [MemberData(nameof(Faults))]
    public void A_client_is_told_what_to_do_and_not_where_the_records_lie(RecordsFault fault)
    {
        var line = RecordsTrouble.Line(new(fault, "The disk that holds /srv/firm/coldwalk.db is full on db.firm.example."));

        Assert.DoesNotContain("firm", line, StringComparison.Ordinal);
        Assert.StartsWith("The ", line, StringComparison.Ordinal);
        Assert.Contains(line.Contains("does not answer", StringComparison.Ordinal) ? "nothing is taken twice" : "Nothing was stored", line, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(RecordsFault.Refused, "There is no such visit.")]
    [InlineData(RecordsFault.Contended, "Others wrote to this visit at the same time again and again.")]
    public void What_the_client_can_put_right_is_told_as_it_is(RecordsFault fault, string line) => Assert.Equal(line, RecordsTrouble.Line(new(fault, line)));
}
