using System.Collections.Immutable;

namespace Assistant.Records.Plots.Drawing;

/// <summary>A line drawing in points (1/72 in), y downwards, to be drawn by any pen in one colour.</summary>
public sealed record PlotDrawing(ImmutableArray<Stroke> Strokes, ImmutableArray<Dot> Dots, ImmutableArray<Label> Labels)
{
    /// <summary>The width of every plot: what a phone of 360 px shows without shrinking the text.</summary>
    public const double Width = 360;

    public const double Height = 250;

    /// <summary>The height of the letters.</summary>
    public const double TextSize = 10.5;
}

/// <summary>What a line stands for; told apart by its weight and dashes alone, so that a black and white print shows it.</summary>
public enum Ink
{
    Frame,
    Grid,

    /// <summary>What belongs to the matter itself, such as the dome of saturation.</summary>
    Ground,

    /// <summary>A limit or a setting to hold against.</summary>
    Guide,

    /// <summary>How it should be, or would be on the coldest day.</summary>
    Design,

    /// <summary>How it was read.</summary>
    Measured,
}

public readonly record struct DrawnPoint(double X, double Y);

/// <summary>A line through points.</summary>
public sealed record Stroke(Ink Ink, ImmutableArray<DrawnPoint> Points);

/// <summary>A point that was read, or reckoned.</summary>
/// <param name="IsHollow">True where no reading gives it.</param>
public sealed record Dot(DrawnPoint At, bool IsHollow);

/// <summary>A short text.</summary>
/// <param name="Anchor">-1 where it begins at the point, 0 where it is centred on it, 1 where it ends there.</param>
/// <param name="IsInside">True where it stands over lines: the pen clears the paper behind it.</param>
public sealed record Label(DrawnPoint At, string Text, int Anchor, bool IsInside = false);
