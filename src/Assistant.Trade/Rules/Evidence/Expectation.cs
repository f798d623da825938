using Assistant.Trade.Quantities;
using Assistant.Trade.Rules.Thresholds;

namespace Assistant.Trade.Rules.Evidence;

/// <summary>What one fault expects of one symptom: a range of values, or a set of words.</summary>
/// <param name="Low">Lower end of the range, included; in the symptom's own dimension.</param>
/// <param name="High">Upper end, included.</param>
/// <param name="Words">For a thing seen: a bit for each allowed choice of its fact, in the catalogue's order; 0 for a number.</param>
/// <param name="Scatter">How far sound plants differ among themselves in this number; or, for a thing seen, how much its absence weighs (in squared errors).</param>
/// <param name="IsProof">The symptom that discriminates this fault from its neighbours.</param>
/// <param name="IsHint">It speaks for the fault where it fits, though a sound plant may show it as well.</param>
/// <param name="IsNeutral">Allowed rather than looked for: alone it never speaks for the fault.</param>
internal readonly record struct Expectation(Symptom Symptom, double Low, double High, int Words, double Scatter, bool IsProof, bool IsNeutral = false, bool IsHint = false)
{
    /// <summary>The most that one number may weigh: five errors out is as wrong as ten.</summary>
    private const double MostWeight = 25;

    public static Expectation AtLeast(Symptom symptom, TemperatureDifference low, TemperatureDifference scatter) => Within(symptom, low.Kelvins, double.PositiveInfinity, scatter.Kelvins);

    public static Expectation AtLeast(Symptom symptom, Share low, Share scatter) => Within(symptom, low.Value, double.PositiveInfinity, scatter.Value);

    public static Expectation AtMost(Symptom symptom, TemperatureDifference high, TemperatureDifference scatter) => Within(symptom, double.NegativeInfinity, high.Kelvins, scatter.Kelvins);

    public static Expectation AtMost(Symptom symptom, Share high, Share scatter) => Within(symptom, double.NegativeInfinity, high.Value, scatter.Value);

    public static Expectation Between(Symptom symptom, TemperatureDifference low, TemperatureDifference high, TemperatureDifference scatter) => Within(symptom, low.Kelvins, high.Kelvins, scatter.Kelvins);

    public static Expectation Between(Symptom symptom, Share low, Share high, Share scatter) => Within(symptom, low.Value, high.Value, scatter.Value);

    /// <summary>One of these words is seen; if another is, that weighs so much.</summary>
    public static Expectation Sees(Symptom symptom, Weight weight, params ReadOnlySpan<int> choices)
    {
        var words = 0;
        foreach (var choice in choices)
        {
            words |= 1 << choice;
        }

        return new(symptom, 0, 0, words, weight.SquaredErrors, false);
    }

    /// <summary>Any of these words will do and none of them speaks for the fault.</summary>
    public static Expectation Allows(Symptom symptom, Weight weight, params ReadOnlySpan<int> choices) => Sees(symptom, weight, choices) with { IsNeutral = true };

    /// <summary>The same, allowed rather than looked for.</summary>
    public Expectation Neutral() => this with { IsNeutral = true };

    public Expectation Hinting() => this with { IsHint = true };

    public Expectation Proving() => this with { IsProof = true };

    private static Expectation Within(Symptom symptom, double low, double high, double scatter) => new(symptom, low, high, 0, scatter, false);

    /// <summary>How far the measure is from what is expected, in squared errors: 0 where it fits or is not known.</summary>
    public double Misfit(Measure measure)
    {
        if (!measure.IsKnown)
        {
            return 0;
        }

        if (Words != 0)
        {
            return (Words & (1 << (int)measure.Value)) != 0 ? 0 : Scatter;
        }

        var outside = measure.Value < Low ? Low - measure.Value : measure.Value > High ? measure.Value - High : 0;
        var variance = (measure.Error * measure.Error / 3) + (Scatter * Scatter);
        return Math.Min(outside * outside / variance, MostWeight);
    }

    /// <summary>True where a number lies less than an error outside the range, or where one of the words is seen, however little another would weigh.</summary>
    public bool Fits(Measure measure) => Words != 0 ? Misfit(measure) == 0 : Misfit(measure) < 1;

    /// <summary>True where a share hints at the fault: it lies on the fault's side of what is expected (1) even if its instruments were off by all they may be.</summary>
    public bool HintsAt(Measure measure) => IsHint && (High < 1 ? measure.Value + measure.Error < 1 : measure.Value - measure.Error > 1);

    /// <summary>True where the measure fits even if its instruments were off by all they may be.</summary>
    public bool HoldsBeyondError(Measure measure) =>
        measure.IsKnown && (Words != 0 ? Misfit(measure) == 0 : measure.Value - measure.Error >= Low && measure.Value + measure.Error <= High);
}
