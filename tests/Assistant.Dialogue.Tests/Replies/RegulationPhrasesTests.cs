using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Trade.Ledgers;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Regulations;
using Assistant.Trade.Rules;
using Mass = UnitsNet.Mass;

namespace Assistant.Dialogue.Tests.Replies;

/// <summary>Everything a rule or the ledger can find has a sentence that its parts fill.</summary>
public sealed class RegulationPhrasesTests
{
    private static readonly PhraseBook Book = PhraseBook.Load(RepositoryFiles.ReadAll("dialogs/phrases", "*.yaml"));

    [Fact]
    public void Every_finding_of_a_rule_can_be_said()
    {
        var findings = Findings().ToList();

        Assert.Equal(Enum.GetValues<RegulationCode>(), findings.Select(f => f.Code).Distinct().Order());
        foreach (var finding in findings)
        {
            AssertSaid(Book.Say(finding.Says, UnitSystem.Us));
            AssertSaid(Book.Say(finding.Reminder, UnitSystem.Metric));
        }
    }

    [Fact]
    public void A_finding_is_said_with_its_numbers_and_the_reminder_with_its_source()
    {
        var over = Findings().First(f => f.Code == RegulationCode.LeakRateOver);

        Assert.Equal("The leak rate is over the threshold: 25 % a year against 20 %, by the 150 lb added on 2026-03-01 (84.106(b), (c)(2); 84.102).", Book.Say(over.Says, UnitSystem.Us).Full);
        Assert.Equal(
            "Check the current text and your authority: 40 CFR 84.106; definitions in 84.102, in force since 2026-01-01, here read while under revision on 2026-11-25.",
            Book.Say(over.Reminder, UnitSystem.Us).Full);
    }

    [Fact]
    public void Every_refusal_gap_and_mix_of_the_ledger_can_be_said()
    {
        var entry = new CylinderEntry
        {
            Id = "1",
            At = new(2026, 2, 3, 8, 0, 0, TimeSpan.Zero),
            By = "tech",
            Tag = "R1",
            Tare = new(12_000),
            GrossBefore = new(12_000),
            GrossAfter = new(31_500),
            Purpose = EntryPurpose.Recover,
            Refrigerant = "R448A",
        };
        var back = entry with { GrossBefore = new(31_500), GrossAfter = new(12_000) };
        Reason[] reasons =
        [
            .. Enum.GetValues<RefusalReason>().Select(r => LedgerSentences.Of(new Refusal(r, entry, new(19_500), new(19_008)))),
            LedgerSentences.Of(new LedgerGap("R1", entry, back, new(-200))),
            LedgerSentences.Of(new LedgerGap("R1", entry, back, new(200))),
            LedgerSentences.Of(new RefrigerantMix("R1", entry, ["R404A"])),
            LedgerSentences.Of(new RefrigerantMix("R1", back, ["R404A"])),
        ];
        AssertSaid(reasons);
    }

    private static void AssertSaid(IEnumerable<Reason> reasons)
    {
        foreach (var reason in reasons)
        {
            AssertSaid(Book.Say(reason, UnitSystem.Us));
        }
    }

    private static void AssertSaid(Phrase phrase)
    {
        Assert.NotEmpty(phrase.Full);
        Assert.NotEmpty(phrase.Brief);
        Assert.True(phrase.Brief.Length <= phrase.Full.Length, phrase.Brief);
    }

    // An invented rack of 600 lb; each line adds what the codes before it leave out.
    private static IEnumerable<RegulationFinding> Findings()
    {
        var rack = Appliance("R404A", 600);
        var leak = new RefrigerantAdded(new(2026, 3, 1), Mass.FromPounds(150));
        var tested = new VerificationTested(new(2026, 3, 10), VerificationTest.Initial, Passed: true);
        var more = new RefrigerantAdded(new(2026, 6, 1), Mass.FromPounds(700));
        var removed = new RefrigerantRemoved(new(2026, 4, 1), Mass.FromPounds(50), ForTheSeason: true);
        var back = new RefrigerantAdded(new(2026, 10, 1), Mass.FromPounds(50), AdditionReason.Seasonal);
        var repaired = new LeakRepaired(new(2026, 5, 20));
        return
        [
            .. Us(rack, leak),
            .. Us(rack, leak, tested),
            .. Us(Appliance("R404A", 100), leak),
            .. Us(rack, leak, more, removed, back),
            .. Us(rack, back),
            .. Us(rack, new RefrigerantAdded(new(2026, 3, 1), Mass.FromPounds(1))),
            .. Us(Appliance("R404A", 2000)),
            .. Compliance.OfFacility([(rack, LeakRateMethod.Annualising), (rack, LeakRateMethod.Rolling)], Jurisdiction.UnitedStates, AsOf),
            .. Eu(Appliance("R404A", 600)),
            .. Eu(rack, repaired),
            .. Eu(rack, new LeakInspected(new(2026, 5, 1))),
            .. Eu(Appliance("R404A", 5) with { IsHermeticallySealed = true }),
        ];
    }

    private static readonly DateOnly AsOf = new(2026, 11, 1);

    private static Appliance Appliance(string refrigerant, double pounds) =>
        new("invented", RefrigerantLibrary.Find(refrigerant)!.Components, Mass.FromPounds(pounds), ApplianceUse.CommercialRefrigeration);

    private static ImmutableArray<RegulationFinding> Us(Appliance appliance, params ServiceEvent[] events) =>
        Compliance.Of(appliance, events, Jurisdiction.UnitedStates, LeakRateMethod.Annualising, AsOf);

    private static ImmutableArray<RegulationFinding> Eu(Appliance appliance, params ServiceEvent[] events) =>
        Compliance.Of(appliance, events, Jurisdiction.EuropeanUnion, LeakRateMethod.Annualising, AsOf);
}
