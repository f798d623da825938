namespace Assistant.Trade.Rules.Evidence;

/// <summary>A value with the error its instruments allow, both in the symptom's own dimension; unknown where the facts do not give it.</summary>
internal readonly record struct Measure(double Value, double Error)
{
    /// <summary>What no fact gives.</summary>
    public static Measure Unknown { get; } = new(double.NaN, double.NaN);

    public bool IsKnown => !double.IsNaN(Value);

    /// <summary>The difference, with the errors added as independent ones.</summary>
    public static Measure operator -(Measure left, Measure right) =>
        new(left.Value - right.Value, Math.Sqrt((left.Error * left.Error) + (right.Error * right.Error)));

    public static Measure operator +(Measure left, double right) => left with { Value = left.Value + right };

    public static Measure operator /(Measure left, double right) => new(left.Value / right, left.Error / right);

    public Measure Widen(double error) => this with { Error = Math.Sqrt((Error * Error) + (error * error)) };
}
