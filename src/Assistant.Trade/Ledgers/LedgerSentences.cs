using System.Collections.Immutable;
using System.Globalization;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Trade.Ledgers;

/// <summary>What a ledger has to say, as the key of a sentence and the parts that fill it.</summary>
public static class LedgerSentences
{
    /// <summary>Why an entry was refused, with <c>tag</c>, <c>found</c> and <c>limit</c> where the reason is one of mass.</summary>
    public static Reason Of(Refusal refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        return new Reason("ledger." + Codes.Of(refusal.Reason), [("tag", refusal.Entry.Tag), .. Part("found", refusal.Found), .. Part("limit", refusal.Limit)]);
    }

    /// <summary>Where weights do not follow: <c>missing</c> or <c>surplus</c>, with the two times and people.</summary>
    public static Reason Of(LedgerGap gap)
    {
        ArgumentNullException.ThrowIfNull(gap);
        var isMissing = gap.Difference < Grams.Zero;
        return new Reason(
            isMissing ? "ledger.gap-missing" : "ledger.gap-surplus",
            ("tag", gap.Tag),
            ("difference", Amount(isMissing ? Grams.Zero - gap.Difference : gap.Difference)),
            ("earlier", Time(gap.Earlier)),
            ("earlier_by", gap.Earlier.By),
            ("later", Time(gap.Later)),
            ("later_by", gap.Later.By));
    }

    /// <summary>Which refrigerant met which in the cylinder, or came out of one that holds another.</summary>
    public static Reason Of(RefrigerantMix mix)
    {
        ArgumentNullException.ThrowIfNull(mix);
        return new Reason(mix.Entry.Gain > Grams.Zero ? "ledger.mixed" : "ledger.other-refrigerant", ("tag", mix.Tag), ("refrigerant", mix.Entry.Refrigerant), ("present", string.Join(", ", mix.Present)));
    }

    private static ImmutableArray<ReasonPart> Part(string name, Grams? mass) => mass is { } grams ? [(name, Amount(grams))] : [];

    private static Amount Amount(Grams mass) => new(mass.Value / 1000.0, Dimension.Mass);

    private static string Time(CylinderEntry entry) => entry.At.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
