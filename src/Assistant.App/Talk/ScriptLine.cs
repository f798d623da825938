namespace Assistant.App.Talk;

/// <summary>One line of a script that means something.</summary>
public abstract record ScriptLine;

/// <summary>Something is said.</summary>
/// <param name="By">Who says it; null is the technician.</param>
public sealed record SpokenLine(string? By, string Text) : ScriptLine;

/// <summary>The clock moves on.</summary>
public sealed record WaitLine(TimeSpan Time) : ScriptLine;
