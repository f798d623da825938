using System.Collections.Immutable;

namespace Assistant.Records.Reports.Drawing;

/// <summary>A line drawing in points (1/72 in), y downwards, to be drawn by any pen.</summary>
public sealed record CycleDrawing(double Width, double Height, ImmutableArray<Stroke> Strokes, ImmutableArray<Dot> Dots, ImmutableArray<Label> Labels);

/// <summary>What a line stands for; the pen decides how that looks.</summary>
public enum Ink
{
    Frame,
    Grid,
    Dome,
    Design,
    Measured,
}

public readonly record struct DrawnPoint(double X, double Y);

/// <summary>A line through points.</summary>
public sealed record Stroke(Ink Ink, ImmutableArray<DrawnPoint> Points);

/// <summary>A corner of the measured cycle.</summary>
/// <param name="IsHollow">True where no reading gives it.</param>
public sealed record Dot(DrawnPoint At, bool IsHollow);

/// <summary>A short text.</summary>
/// <param name="Anchor">-1 where it begins at the point, 0 where it is centred on it, 1 where it ends there.</param>
public sealed record Label(DrawnPoint At, string Text, int Anchor);
