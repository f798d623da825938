using System.Globalization;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>How loud the fan is: the signal to noise ratios, in dB, that every figure is given at.</summary>
internal static class Rooms
{
    public static double[] All { get; } = [double.PositiveInfinity, 20, 10];

    public static string Name(double decibels) => double.IsPositiveInfinity(decibels) ? "clean" : string.Create(CultureInfo.InvariantCulture, $"{decibels} dB");

    public static string Percent(int part, int whole) => whole == 0 ? "-" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * part / whole:0.0}");
}
