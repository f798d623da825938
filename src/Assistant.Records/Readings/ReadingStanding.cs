namespace Assistant.Records.Readings;

/// <summary>What a reading of the log counts for today.</summary>
public enum ReadingStanding
{
    /// <summary>The newest of its fact: what the verdict rests on.</summary>
    Counts,

    /// <summary>Right when it was taken; a later one of the same fact counts now.</summary>
    Superseded,

    /// <summary>Right when it was taken; a fault was put right since, and it was not read again.</summary>
    Outdated,

    /// <summary>Taken back by the one who gave it.</summary>
    Withdrawn,

    /// <summary>Did not fit and was never confirmed: kept out of the verdict.</summary>
    Questioned,

    /// <summary>Another person read it otherwise within moments, and nobody has said which counts: neither does.</summary>
    Disputed,
}
