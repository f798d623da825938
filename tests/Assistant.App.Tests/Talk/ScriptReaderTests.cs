using Assistant.App.Commands;
using Assistant.App.Talk;

namespace Assistant.App.Tests.Talk;

public class ScriptReaderTests
{
    [Fact]
    public void A_plain_line_is_what_the_technician_says() =>
        Assert.Equal([new SpokenLine(null, "9 degC")], ScriptReader.Read("s.txt", ["9 degC"]));

    [Fact]
    public void A_line_with_a_name_is_said_by_that_person() =>
        Assert.Equal([new SpokenLine("kim", "head 24 bar")], ScriptReader.Read("s.txt", ["@kim head 24 bar"]));

    [Theory]
    [InlineData("+15m", 900)]
    [InlineData("+90s", 90)]
    [InlineData("+1.5h", 5400)]
    [InlineData("+2d", 172800)]
    [InlineData("+ 20 m", 1200)]
    public void A_plus_moves_the_clock_on(string line, int seconds) =>
        Assert.Equal([new WaitLine(TimeSpan.FromSeconds(seconds))], ScriptReader.Read("s.txt", [line]));

    [Fact]
    public void Comments_and_blank_lines_give_nothing() =>
        Assert.Empty(ScriptReader.Read("s.txt", ["# a comment", "", "   "]));

    [Theory]
    [InlineData("+15 psig")]
    [InlineData("-8")]
    [InlineData("+5")]
    public void A_signed_reading_is_said_and_moves_no_clock(string line) =>
        Assert.Equal([new SpokenLine(null, line)], ScriptReader.Read("s.txt", [line]));

    [Theory]
    [InlineData("@kim")]
    [InlineData("@ nine")]
    public void A_name_without_words_is_refused_with_file_and_line(string line)
    {
        var failure = Assert.Throws<CommandFailure>(() => ScriptReader.Read("s.txt", ["# one", line]).ToList());

        Assert.StartsWith($"s.txt:2: {line}:", failure.Message, StringComparison.Ordinal);
        Assert.Equal(2, failure.ExitCode);
    }

    [Fact]
    public void The_clock_is_not_moved_on_by_more_than_ten_years() =>
        Assert.Throws<CommandFailure>(() => ScriptReader.Read("s.txt", ["+999999999d"]).ToList());
}
