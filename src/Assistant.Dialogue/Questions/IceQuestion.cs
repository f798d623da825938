namespace Assistant.Dialogue.Questions;

/// <summary>"Can I chip it", "how do I get it off": how ice is taken off a coil, and how not.</summary>
internal static class IceQuestion
{
    public static Answer Answer(Asked asked) => Asked.Because(asked.Say("answer.ice"), asked.Say("answer.ice.care"));
}
