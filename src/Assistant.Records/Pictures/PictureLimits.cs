namespace Assistant.Records.Pictures;

/// <summary>What a picture may cost.</summary>
public static class PictureLimits
{
    /// <summary>Of what is sent, in bytes: 20 MB, more than a telephone's camera makes.</summary>
    public const int LargestFile = 20_000_000;

    /// <summary>Of what is sent, in pixels: 50 million. Asked of the header, before anything is unpacked.</summary>
    public const long MostPixels = 50_000_000;

    /// <summary>Of what is kept, in pixels.</summary>
    public const int LongestEdge = 1600;

    /// <summary>JPEG quality of what is kept, 0 to 100.</summary>
    public const int Quality = 85;
}
