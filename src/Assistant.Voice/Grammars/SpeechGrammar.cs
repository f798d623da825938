namespace Assistant.Voice.Grammars;

/// <summary>One thing to listen for: a JSGF grammar, known to the recogniser by its name.</summary>
/// <param name="Expansion">The right-hand side of its one public rule.</param>
public sealed record SpeechGrammar(string Name, string Expansion)
{
    /// <summary>The grammar as the recogniser takes it.</summary>
    public string Jsgf => $"#JSGF V1.0;\ngrammar {Name};\npublic <{Name}> = {Expansion};\n";

    /// <summary>Every word in it.</summary>
    public IEnumerable<string> Words => Expansion.Split([' ', '(', ')', '[', ']', '|', '+', '*'], StringSplitOptions.RemoveEmptyEntries).Distinct();

    public static SpeechGrammar Of(string name, IEnumerable<string> phrases) => new(name, "(" + string.Join(" | ", phrases.Distinct()) + ")");

    /// <summary>What fits either.</summary>
    public SpeechGrammar Or(string name, SpeechGrammar other) => new(name, $"({Expansion} | {other.Expansion})");
}
