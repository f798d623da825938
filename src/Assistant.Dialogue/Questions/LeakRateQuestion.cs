using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Dialogue.Questions;

/// <summary>"What leak rate is 4 lb a year on a 20 lb charge": the annualising method of 40 CFR 82.152.</summary>
internal static class LeakRateQuestion
{
    private const int Year = 365;

    public static Answer Answer(Asked asked)
    {
        // "4 lb on a 20 lb charge": where neither is named, the first was added and the second is the charge.
        var masses = asked.Arguments.Numbers.Where(n => n.Unit?.Dimension == Dimension.Mass && n.Fact is null).Select(n => n.Unit!.ToCanonical(n.Value)).ToList();
        var added = Named(asked, FactCatalogue.ChargeAdded) ?? (masses.Count > 0 ? masses[0] : asked.Known(FactCatalogue.ChargeAdded, Dimension.Mass));
        var charge = Named(asked, FactCatalogue.FullCharge) ?? (masses.Count > 1 ? masses[1] : asked.Known(FactCatalogue.FullCharge, Dimension.Mass));
        if (added is not { } put)
        {
            return asked.Needs(FactCatalogue.ChargeAdded);
        }

        if (charge is not > 0)
        {
            return asked.Needs(FactCatalogue.FullCharge);
        }

        var days = asked.Said(Dimension.Time) is { } seconds ? Math.Max(1, (int)Math.Round(seconds / 86_400)) : (int?)null;
        if (days is null && asked.Arguments.Numbers.Any(n => n.Unit is null && n.Fact is null))
        {
            // "In two months": a time that was not understood must not become a year.
            return new(Phrase.Empty, [], asked.Say("answer.leak-rate.needs-days"));
        }

        var rate = AnnualLeakRate.Annualising(Mass.FromKilograms(put), Mass.FromKilograms(charge.Value), days ?? Year);
        return Asked.Because(
            asked.Say("answer.leak-rate", ("rate", Amount.Ratio(rate.DecimalFractions))),
            days is { } since
                ? asked.Say("answer.leak-rate.annualised", ("added", new Amount(put, Dimension.Mass)), ("charge", new Amount(charge.Value, Dimension.Mass)), ("time", new Amount(since * 86_400.0, Dimension.Time)))
                : asked.Say("answer.leak-rate.year", ("added", new Amount(put, Dimension.Mass)), ("charge", new Amount(charge.Value, Dimension.Mass))),
            asked.Say("answer.leak-rate.check"));
    }

    private static double? Named(Asked asked, Fact fact) =>
        asked.Names(fact) ? asked.Said(Dimension.Mass, fact) : null;
}
