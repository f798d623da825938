using Assistant.Dialogue.Tests.Understanding;

namespace Assistant.Dialogue.Tests.Turns;

/// <summary>A walk reminds of the next reading; a reading that came makes its reminder needless.</summary>
public sealed class RereadingReminderTests
{
    [Fact]
    public void Only_the_last_reminder_of_a_reading_is_open_and_none_once_it_is_good()
    {
        var talk = new Conversation(LexiconFiles.Understander.Understand);
        talk.Say("pull a vacuum");
        talk.Say("ok");
        talk.Say("70 degrees");

        talk.Say("1500 microns");
        Assert.Single(talk.State.Reminders);
        var first = talk.State.Reminders[0];

        talk.Say("900 microns");
        Assert.Equal("pump", talk.Stop);
        Assert.True(Assert.Single(talk.State.Reminders).Due > first.Due);

        talk.Say("300 microns");
        Assert.Equal("isolate", talk.Stop);
        Assert.Empty(talk.State.Reminders);
    }
}
