using Assistant.Voice.Scoring.Kit;

namespace Assistant.Voice.Tests;

/// <summary>One recogniser for all tests: loading it is the costly part.</summary>
public sealed class HearingParts : IDisposable
{
    public VoiceParts Parts { get; } = new();

    public void Dispose() => Parts.Dispose();
}

[CollectionDefinition(Name)]
public sealed class HearingCollection : ICollectionFixture<HearingParts>
{
    public const string Name = "hearing";
}
