using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Which place's things are meant where two places have things of one name.</summary>
/// <param name="Stands">Where the person stands as far as the visit knows, or null.</param>
/// <param name="Told">Where the message's other things are, or null.</param>
internal readonly record struct Whereabouts(Place? Stands, Place? Told)
{
    public Place? Best => Told ?? Stands;

    /// <summary>True where the person is known to stand at this thing and not at the one that was asked for.</summary>
    public bool IsRatherAt(Fact thing, Fact asked) => Stands is { } place && thing.Place == place && asked.Place != place && Told != asked.Place;
}
