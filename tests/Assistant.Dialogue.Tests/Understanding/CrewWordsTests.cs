using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Understanding;

/// <summary>The words of people who are on one visit together.</summary>
public sealed class CrewWordsTests
{
    [Theory]
    [InlineData("who", "who")]
    [InlineData("who is on the visit?", "who")]
    [InlineData("who's here", "who")]
    [InlineData("ok who else is on this call", "who")]
    [InlineData("who are you", "help")]
    [InlineData("watch", "watch")]
    [InlineData("I'm just watching", "watch")]
    [InlineData("stop watching", "unwatch")]
    [InlineData("leave", "leave")]
    [InlineData("leave the visit", "leave")]
    [InlineData("take me off this visit", "leave")]
    [InlineData("leave it", "skip")]
    [InlineData("leaving the site", "done")]
    [InlineData("handover to Kim", "handover")]
    [InlineData("hand it over to Lee Park please", "handover")]
    public void Each_is_the_command_it_was_meant_for(string text, string command) =>
        Assert.Equal(command, LexiconFiles.Understander.Understand(text, new(null, UnitSystem.Us)).Command);
}
