using Assistant.Voice.Scoring.Kit;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>Both main measures with phrases, noise and voices that no limit was set with.</summary>
internal static class FreshScore
{
    public static void Recognition(VoiceParts parts) =>
        RecognitionScore.Write(parts, "Numbers heard before read-back: fresh phrases", FreshPhrases.Numbers, FreshPhrases.Voices.Concat(FreshPhrases.Hard), 81_001);

    public static void Stored(VoiceParts parts) =>
        StoredScore.Write(parts, "Values stored: fresh phrases", "stored-fresh", [.. FreshPhrases.Numbers, .. FreshPhrases.Choices], FreshPhrases.Voices, FreshPhrases.Hard, 90_000);
}
