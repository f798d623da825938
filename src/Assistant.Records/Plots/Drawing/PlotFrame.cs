using System.Collections.Immutable;

namespace Assistant.Records.Plots.Drawing;

/// <summary>The two axes of a plot: where a value lies on the paper, and the frame, grid and numbers around it.</summary>
public sealed class PlotFrame(Axis across, Axis up)
{
    private const double Left = 44;
    private const double Right = PlotDrawing.Width - 10;
    private const double Top = 20;
    private const double Bottom = PlotDrawing.Height - 34;

    public DrawnPoint At(double x, double y) => new(Left + (across.Share(x) * (Right - Left)), Bottom - (up.Share(y) * (Bottom - Top)));

    /// <summary>The frame, the grid, the numbers along it and what the axes count.</summary>
    public PlotDrawing Empty() => new(
        [
            .. up.Ticks.Select(y => new Stroke(Ink.Grid, [new(Left, At(across.Low, y).Y), new(Right, At(across.Low, y).Y)])),
            .. across.Ticks.Select(x => new Stroke(Ink.Grid, [new(At(x, up.Low).X, Top), new(At(x, up.Low).X, Bottom)])),
            new(Ink.Frame, [new(Left, Top), new(Left, Bottom), new(Right, Bottom), new(Right, Top), new(Left, Top)]),
        ],
        [],
        [
            .. up.Ticks.Select(y => new Label(new(Left - 5, At(across.Low, y).Y + 3.5), Axis.Number(y), 1)),
            .. across.Ticks.Select(x => new Label(new(At(x, up.Low).X, Bottom + 14), Axis.Number(x), 0)),
            new(new((Left + Right) / 2, PlotDrawing.Height - 5), across.Title, 0),
            new(new(4, Top - 8), up.Title, -1),
        ]);

    /// <summary>A line through values; what lies off the axes is left out.</summary>
    public Stroke Line(Ink ink, IEnumerable<(double X, double Y)> values) =>
        new(ink, [.. values.Where(v => across.Holds(v.X) && up.Holds(v.Y)).Select(v => At(v.X, v.Y))]);

    public Dot Dot(double x, double y, bool isHollow = false) => new(At(x, y), isHollow);

    /// <summary>Level lines right across, each with its words over its left or right end; nothing for one off the axis. Words that would lie on each other give way.</summary>
    public (ImmutableArray<Stroke> Strokes, ImmutableArray<Label> Labels) Levels(bool atRight, params IEnumerable<(double Y, string Words)> levels)
    {
        var strokes = ImmutableArray.CreateBuilder<Stroke>();
        var labels = ImmutableArray.CreateBuilder<Label>();
        var free = double.PositiveInfinity;
        foreach (var (y, words) in levels.Where(level => up.Holds(level.Y)).OrderBy(level => level.Y))
        {
            var height = At(across.Low, y).Y;
            strokes.Add(new(Ink.Guide, [new(Left, height), new(Right, height)]));
            var at = Math.Min(height - 3, free);
            labels.Add(atRight ? new(new(Right - 4, at), words, 1, IsInside: true) : new(new(Left + 4, at), words, -1, IsInside: true));
            free = at - PlotDrawing.TextSize - 1;
        }

        return (strokes.ToImmutable(), labels.ToImmutable());
    }

    /// <summary>An upright line from the bottom to the top, with its words beside its foot.</summary>
    public (Stroke Stroke, Label Label) Upright(double x, string words)
    {
        var across = At(x, up.Low).X;
        var isRight = across > (Left + Right) / 2;
        return (new(Ink.Guide, [new(across, Top), new(across, Bottom)]), new(new(across + (isRight ? -4 : 4), Bottom - 6), words, isRight ? 1 : -1, IsInside: true));
    }
}
