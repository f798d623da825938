using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Walks;

/// <summary>One simple condition over the facts of a visit.</summary>
public abstract record WalkCondition
{
    public abstract bool Holds(WalkView view);

    /// <summary>The condition in words, for the drawing and for "why not?".</summary>
    public abstract override string ToString();
}

/// <summary><c>coil_ice: blocked</c>: the fact is one of these words.</summary>
public sealed record IsWord(Fact Fact, ImmutableArray<string> Words) : WalkCondition
{
    public override bool Holds(WalkView view) => view.Facts.Word(Fact) is { } word && Words.Contains(word);

    public override string ToString() => $"{Fact} is {string.Join(" or ", Words)}";
}

/// <summary><c>ever: { coil_ice: blocked }</c>: the fact was one of these words at some time of the visit.</summary>
public sealed record WasWord(Fact Fact, ImmutableArray<string> Words) : WalkCondition
{
    public override bool Holds(WalkView view) => view.Ever(Fact, Words);

    public override string ToString() => $"{Fact} was {string.Join(" or ", Words)}";
}

/// <summary><c>disagree: [a, b], by: 2 degF</c>: two temperatures are further apart than that.</summary>
public sealed record Disagree(Fact First, Fact Second, TemperatureDifference By, string Limit) : WalkCondition
{
    public override bool Holds(WalkView view) =>
        view.Facts.Temperature(First) is { } a && view.Facts.Temperature(Second) is { } b
        && Math.Abs((a - b).Kelvins) > By.Kelvins + Rounding;

    public override string ToString() => $"{First} and {Second} differ by more than {Limit}";

    // Two readings exactly the limit apart agree, whatever the conversion does to the last bit.
    private const double Rounding = 1e-9;
}

/// <summary><c>above: [a, b], by: c</c>: temperature a is above temperature b by at least the difference c; an unknown difference counts as none.</summary>
public sealed record Above(Fact First, Fact Second, Fact By) : WalkCondition
{
    public override bool Holds(WalkView view) =>
        view.Facts.Temperature(First) is { } a && view.Facts.Temperature(Second) is { } b
        && (a - b).Kelvins >= (view.Facts.Difference(By)?.Kelvins ?? 0);

    public override string ToString() => $"{First} is above {Second} by {By}";
}

/// <summary><c>at: unit</c>: something was read there on this visit.</summary>
public sealed record WasAt(Place Where) : WalkCondition
{
    public override bool Holds(WalkView view) => view.WasAt(Where);

    public override string ToString() => $"something was read at the {Where.ToString().ToLowerInvariant()}";
}

/// <summary><c>skipped: act</c>: that stop was left out.</summary>
public sealed record WasSkipped(string Stop) : WalkCondition
{
    public override bool Holds(WalkView view) => view.Run.IsSkipped(Stop);

    public override string ToString() => $"{Stop} was left out";
}

/// <summary><c>known: full_charge</c>: the fact has a value.</summary>
public sealed record IsKnown(Fact Fact) : WalkCondition
{
    public override bool Holds(WalkView view) => view.Facts.Has(Fact);

    public override string ToString() => $"{Fact} is known";
}

/// <summary><c>read: vacuum</c>: the fact was taken after the walk came to this stop.</summary>
public sealed record WasRead(Fact Fact, string Stop) : WalkCondition
{
    public override bool Holds(WalkView view) => view.WasReadSince(Stop, Fact);

    public override string ToString() => $"{Fact} was read here";
}

/// <summary><c>found: leak</c>: a leak was said after the walk came to this stop.</summary>
public sealed record WasLeakFound(string Stop) : WalkCondition
{
    public override bool Holds(WalkView view) => view.Run.Reached(Stop) is { } reached && view.Visit.Leaks.Exists(leak => leak.Number > reached.Number);

    public override string ToString() => "a leak was named here";
}

/// <summary>
/// <c>chosen: { more-leaks: yes }</c>: the option was chosen. A name of the walk's own counts as chosen in this run; another walk's
/// as it was chosen last on the visit.
/// </summary>
public sealed record WasChosen(string Name, ImmutableArray<string> Options) : WalkCondition
{
    public override bool Holds(WalkView view) => Chosen(view) is { } option && Options.Contains(option);

    public override string ToString() => $"{Name} is {string.Join(" or ", Options)}";

    private string? Chosen(WalkView view) =>
        view.Walk.Stops.FirstOrDefault(s => s.Choice?.Name == Name) is { } stop ? view.Run.Chosen(stop.Name) : view.Visit.Chosen(Name);
}

/// <summary><c>judged: moisture</c>: the judgement of a stop came out so.</summary>
public sealed record WasJudged(string Stop, ImmutableArray<string> Outcomes) : WalkCondition
{
    public override bool Holds(WalkView view) => view.Walk.Find(Stop) is { } stop && view.Outcome(stop) is { } outcome && Outcomes.Contains(outcome);

    public override string ToString() => $"judged {string.Join(" or ", Outcomes)}";
}

/// <summary><c>finished: vacuum</c>: that walk was gone through to an end on this visit.</summary>
public sealed record WasFinished(string Walk) : WalkCondition
{
    public override bool Holds(WalkView view) => view.Visit.Runs.All.Any(r => r.Walk == Walk && r.FinishedBy is not null);

    public override string ToString() => $"{Walk} is finished";
}

/// <summary>Several conditions that hold together.</summary>
public sealed record All(ImmutableArray<WalkCondition> Parts) : WalkCondition
{
    public override bool Holds(WalkView view) => Parts.All(p => p.Holds(view));

    public override string ToString() => string.Join(" and ", Parts);
}
