namespace Assistant.Voice.Hearing.Native;

/// <summary>The likelihood, against the best path's, below which a search gives up a path: within words, and at their ends.</summary>
internal readonly record struct Beams(double State, double Word)
{
    /// <summary>The decoder's own defaults.</summary>
    public static readonly Beams Usual = new(1e-48, 7e-29);

    /// <summary>For words the sound may not fit at all: they are followed to the end, to tell by how much.</summary>
    public static readonly Beams Wide = new(1e-200, 1e-200);
}
