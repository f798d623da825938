namespace Assistant.Voice.Grammars;

/// <summary>The numbers a unit is listened for in, both ends counted in, and how many places after the point.</summary>
public sealed record NumberSpan(int From, int To, int Places)
{
    public bool Holds(double value) => value >= From && value <= To;
}
