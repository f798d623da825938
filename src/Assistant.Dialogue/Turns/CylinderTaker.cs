using System.Collections.Immutable;
using Assistant.Dialogue.Cylinders;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Ledgers;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Turns;

/// <summary>
/// Takes what is said of cylinders into their accounts. What lacks is asked back, one thing at a time; what can not be (a recovery
/// cylinder over its limit, contents below nothing) is refused with the reason and does not enter the ledger.
/// </summary>
internal sealed class CylinderTaker(PhraseBook book)
{
    private const int LongestTag = 16;

    private readonly CautionGiver cautions = new(book);

    /// <summary>The facts that go along with a cylinder's account.</summary>
    public static ImmutableArray<Fact> Told { get; } = [FactCatalogue.CylinderWeight, FactCatalogue.CylinderTare, FactCatalogue.ChargeAdded, FactCatalogue.ChargeRecovered];

    /// <summary>The fact that what is asked of a cylinder is most like, so that a bare number is read as one; null where nothing is asked.</summary>
    public static Fact? Expected(VisitState state) => state.Cylinders.Asks switch
    {
        "tare" => FactCatalogue.CylinderTare,
        "before" or "after" or "water-capacity" => FactCatalogue.CylinderWeight,
        "refrigerant" => FactCatalogue.Refrigerant,
        _ => null,
    };

    /// <summary>Takes the message where it speaks of a cylinder; false where it does not.</summary>
    /// <param name="expected">The fact asked for.</param>
    public bool Take(TurnDraft draft, Understood understood, InboundMessage message, Fact? expected)
    {
        var desk = draft.State.Cylinders;
        var told = (understood.Cylinder ?? new()) with { Tag = understood.Cylinder?.Tag ?? Tag(desk, message.Text) };
        if (desk.Asks == "refrigerant" && understood.Observations.FirstOrDefault(o => o.Fact == FactCatalogue.Refrigerant) is { } named)
        {
            told = new() { Refrigerant = named.Value };
        }

        if (!Concerns(desk, told, expected))
        {
            return false;
        }

        var merged = CylinderMerge.Of(desk, told) with { At = draft.At, By = draft.By };
        var settled = CylinderSettling.Settle(merged, draft.State.Facts.Word(FactCatalogue.Refrigerant) ?? desk.Uses.LastOrDefault()?.Refrigerant);
        if (told.IsOpen)
        {
            draft.Say("cylinder.unclear");
        }

        if (CylinderSettling.Disagrees(settled))
        {
            draft.Say("cylinder.disagree", ("amount", Mass(draft, settled.AmountGrams!.Value)), ("scale", Mass(draft, Math.Abs(settled.BeforeGrams!.Value - settled.AfterGrams!.Value))));
            settled = settled with { AmountGrams = null, AfterGrams = null };
        }

        var isImpossible = settled is { AfterGrams: { } after, TareGrams: { } empty } && after < empty;
        if (isImpossible)
        {
            draft.Say("ledger.negative-contents", ("tag", settled.Tag ?? ""), ("found", new Amount(settled.AfterGrams!.Value / 1000.0, Dimension.Mass)), ("limit", new Amount(settled.TareGrams!.Value / 1000.0, Dimension.Mass)));
            settled = settled with { AfterGrams = null };
        }

        var missing = isImpossible ? "after" : CylinderSettling.Missing(settled);
        if (missing is null && settled.IsUse)
        {
            Use(draft, settled, message);
        }
        else
        {
            Note(draft, settled with { Asks = missing }, desk);
        }

        return true;
    }

    /// <summary>"skip" at something asked of a cylinder: the water capacity is taken as unreadable, anything else drops what was begun.</summary>
    public void Skip(TurnDraft draft, InboundMessage message)
    {
        var current = draft.State.Cylinders.Current!;
        if (current.Asks == "water-capacity")
        {
            Take(draft, Understood.Unknown with { Cylinder = new() { IsUnknown = true } }, message, null);
            return;
        }

        draft.Emit(current with { Purpose = null, Reason = null, AfterGrams = null, AmountGrams = null, LossGrams = null, Asks = null, At = draft.At, By = draft.By });
        draft.Say("cylinder.dropped");
    }

    private static bool Concerns(CylinderDesk desk, CylinderTold told, Fact? expected)
    {
        var isAsked = expected == FactCatalogue.CylinderWeight || expected == FactCatalogue.CylinderTare;
        if (desk.Asks is { } asks && (told.HasMass || told.IsOpen || (asks == "water-capacity" && told.IsUnknown) || (asks == "purpose" && told.Purpose is not null) || (asks == "refrigerant" && told.Refrigerant is not null)))
        {
            return told.HasMassUnit || isAsked || !told.HasMass || told.Tag is not null;
        }

        if (told.Tag is not null)
        {
            return true;
        }

        if (desk.Current is { Tag: not null })
        {
            return told.HasMass && (told.Unnamed is null || isAsked || expected?.Kind != FactKind.Mass) && (told.HasMassUnit || isAsked);
        }

        return told.HasMassUnit && (told.Loss is not null || (told is { NamesCylinder: true, Purpose: not null }));
    }

    // "R3" as the whole answer.
    private static string? Tag(CylinderDesk desk, string text)
    {
        var said = text.Trim().TrimEnd('.');
        return desk.Asks == "tag" && said.Length is > 0 and <= LongestTag && (said.Any(char.IsAsciiDigit) || !said.Contains(' ', StringComparison.Ordinal)) ? said.ToUpperInvariant() : null;
    }

    private static void Note(TurnDraft draft, CylinderNoted noted, CylinderDesk desk)
    {
        draft.Emit(noted);
        if (noted.Tag is not { } tag)
        {
            return;
        }

        Acknowledge(draft, desk, noted);

        if (noted is { IsUse: false, Asks: null, BeforeGrams: { } gross, TareGrams: { } tare })
        {
            draft.Say("cylinder.noted", ("tag", tag), ("net", Mass(draft, gross - tare)), ("gross", Mass(draft, gross)));
            Facts(draft, gross, tare);
            Room(draft, noted, gross);
        }
        else if (desk.Current?.Asks is null)
        {
            draft.Say("cylinder.begun", ("tag", tag));
        }

        // The first weighing here against the last one on record.
        if (noted is { IsWeighedHere: true, BeforeGrams: { } now } && desk.Find(tag) is { IsWeighedHere: false, BeforeGrams: { } then } && now != then)
        {
            draft.Say(now < then ? "cylinder.less-than-recorded" : "cylinder.more-than-recorded", ("tag", tag), ("difference", Mass(draft, Math.Abs(now - then))), ("then", Mass(draft, then)));
        }
    }

    // What was asked for is repeated: a wrong number is noticed here.
    private static void Acknowledge(TurnDraft draft, CylinderDesk desk, CylinderNoted noted)
    {
        var taken = desk.Asks switch
        {
            "tare" => noted.TareGrams,
            "before" => noted.BeforeGrams,
            "after" => noted.AfterGrams,
            "water-capacity" => noted.WaterCapacityGrams,
            _ => null,
        };
        if (taken is { } grams && noted.Asks is not null && noted.Asks != desk.Asks)
        {
            draft.Say("cylinder.taken-" + desk.Asks, ("mass", Mass(draft, grams)));
        }
    }

    private void Use(TurnDraft draft, CylinderNoted settled, InboundMessage message)
    {
        var desk = draft.State.Cylinders;
        var idOf = (int i) => $"{message.MessageId}.{draft.State.Version + i}.{draft.State.OpenedAt.UtcTicks:x}";
        var last = desk.Told.IsEmpty ? null : desk.Told[^1] as CylinderUsed;
        var split = CylinderUses.Split(last, settled, idOf);
        var uses = split ?? CylinderUses.Of(settled, idOf);
        var asset = draft.State.AssetId ?? "this visit";
        var ledger = (split is null ? desk : desk.Without(last!.Number)).Ledger(asset);
        foreach (var use in uses)
        {
            var admission = ledger.Admit(use, asset);
            if (admission.Refusal is { } refusal)
            {
                Refuse(draft, settled, refusal);
                return;
            }

            ledger = admission.Ledger;
        }

        foreach (var use in uses)
        {
            draft.Emit(use);
            Tell(draft, use);
        }

        if (settled.Reason is { } why)
        {
            draft.Say("cylinder.reason", ("why", why));
        }

        var balances = ledger.Balances();
        foreach (var gap in balances.Gaps.Where(g => uses.Any(u => u.EntryId == g.Later.Id)))
        {
            draft.Say(book.Say(LedgerSentences.Of(gap), draft.State.Units));
        }

        foreach (var mix in balances.Mixes.Where(m => uses.Any(u => u.EntryId == m.Entry.Id)))
        {
            draft.Say(book.Say(LedgerSentences.Of(mix), draft.State.Units));
        }

        Facts(draft, uses[^1].GrossAfterGrams, uses[^1].TareGrams);
        Room(draft, settled, uses[^1].GrossAfterGrams);
    }

    private void Refuse(TurnDraft draft, CylinderNoted settled, Refusal refusal)
    {
        draft.Say(book.Say(LedgerSentences.Of(refusal), draft.State.Units));
        if (refusal.Reason == RefusalReason.OverFull)
        {
            cautions.Now(draft, CautionCode.OverfullCylinder, draft.State.Place ?? "unit");
        }

        var dropped = settled with { AfterGrams = null, AmountGrams = null, LossGrams = null };
        draft.Emit(refusal.Reason switch
        {
            RefusalReason.TareDiffers => settled with { TareGrams = null, Asks = "tare" },
            RefusalReason.NegativeContents when settled.BeforeGrams < settled.TareGrams => dropped with { BeforeGrams = null, Asks = "before" },
            RefusalReason.NegativeContents or RefusalReason.WrongDirection => dropped with { Asks = "after" },
            _ => dropped with { Purpose = null },
        });
    }

    private static void Tell(TurnDraft draft, CylinderUsed use)
    {
        var moved = use.GrossAfterGrams - use.GrossBeforeGrams;
        var key = use.Purpose == "transfer" ? (moved < 0 ? "cylinder.transferred-out" : "cylinder.transferred-in") : "cylinder." + use.Purpose;
        draft.Say(key, ("tag", use.Tag), ("amount", Mass(draft, Math.Abs(moved))), ("left", Mass(draft, use.GrossAfterGrams - use.TareGrams)), ("gross", Mass(draft, use.GrossAfterGrams)));
    }

    // A recovery cylinder: how much more may go in.
    private static void Room(TurnDraft draft, CylinderNoted noted, long gross)
    {
        if (noted is not { CylinderKind: "recovery", TareGrams: { } tare, Tag: { } tag } || (noted.Purpose is not (null or "recover" or "transfer")))
        {
            return;
        }

        var refrigerant = noted.Refrigerant ?? draft.State.Facts.Word(FactCatalogue.Refrigerant);
        var limit = noted.WaterCapacityGrams is > 0 and var capacity && refrigerant is not null
            ? CylinderLedger.MaximumContents(new(tag, CylinderKind.Recovery, null, new(tare)) { WaterCapacity = new(capacity) }, refrigerant, LedgerUses.LiquidDensity)
            : null;
        if (limit is { } most)
        {
            draft.Say("cylinder.room", ("limit", Mass(draft, most.Value)), ("room", Mass(draft, Math.Max(0, most.Value - (gross - tare)))));
        }
        else
        {
            draft.Say("ledger.fill-not-judged", ("tag", tag));
        }
    }

    // What walks and questions ask for.
    private static void Facts(TurnDraft draft, long gross, long tare)
    {
        Fact(draft, FactCatalogue.CylinderWeight, gross);
        Fact(draft, FactCatalogue.CylinderTare, tare);
        Fact(draft, FactCatalogue.ChargeAdded, draft.State.Cylinders.Charged.Value);
        Fact(draft, FactCatalogue.ChargeRecovered, draft.State.Cylinders.Recovered.Value);
    }

    private static void Fact(TurnDraft draft, Fact fact, long grams)
    {
        var unit = draft.State.Units == UnitSystem.Us ? UnitOfMeasure.Pound : UnitOfMeasure.Kilogram;
        // Told in ounces, it is the ounces that count and not the last gram.
        var value = draft.State.Units == UnitSystem.Us
            ? Math.Round(UnitOfMeasure.Ounce.FromCanonical(grams / 1000.0), 1, MidpointRounding.AwayFromZero) / 16
            : unit.FromCanonical(grams / 1000.0);
        var known = (draft.State.Facts.Find(fact) as Reading)?.Canonical;
        if ((grams > 0 || known is not null) && (known is null || Math.Abs(known.Value - (grams / 1000.0)) > 0.0005 || fact == FactCatalogue.CylinderWeight))
        {
            draft.Emit(FactTaker.Event(new Reading(fact, value, unit), draft.State.Place ?? "unit", draft.State.About == fact.Name ? draft.State.Stop : null, draft.At, draft.By));
        }
    }

    private static string Mass(TurnDraft draft, long grams) => MassText.Written(new(grams), draft.State.Units);
}
