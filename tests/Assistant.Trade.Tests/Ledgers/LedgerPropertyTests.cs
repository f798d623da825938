using Assistant.Trade.Ledgers;
using CsCheck;

namespace Assistant.Trade.Tests.Ledgers;

/// <summary>Random ledgers, generated beside a running account kept in plain integers.</summary>
public class LedgerPropertyTests
{
    private const int Cases = 10_000;

    private static readonly string[] Tags = ["A", "B", "C"];

    private static readonly string[] Assets = ["rack", "walk-in"];

    // Which cylinder and asset, purpose, share of what can move in per mille, minutes since the last step, drift of the scale in g, rank in the shuffle.
    private static readonly Gen<(int Cylinder, int Asset, int Purpose, int Share, int Minutes, int Drift, int Rank)[]> Steps =
        Gen.Select(Gen.Int[0, 2], Gen.Int[0, 1], Gen.Int[0, 4], Gen.Int[0, 1000], Gen.Int[0, 2], Gen.Int[-300, 300], Gen.Int).Array[0, 24];

    [Fact]
    public void Ledgers_without_drift_close_to_the_gram_in_any_order() => Steps.Sample(
        steps =>
        {
            var story = Story.Of(steps, drifts: false);
            var balances = story.Ledger(shuffled: true).Balances();
            Assert.Empty(balances.Gaps);
            foreach (var (tag, contents) in story.Contents.Where(c => balances.Cylinders.ContainsKey(c.Key)))
            {
                // Where every moment ends at the weight it began with, no record tells which weight that was: only that the circle closes.
                Assert.Equal(story.IsCircle(tag) ? balances.Cylinders[tag].Opening.Value : contents, balances.Cylinders[tag].Remaining.Value);
            }

            foreach (var asset in Assets)
            {
                Assert.Equal(story.Charged[asset], balances.Assets.GetValueOrDefault(asset)?.Charged.Value ?? 0);
                Assert.Equal(story.Recovered[asset], balances.Assets.GetValueOrDefault(asset)?.Recovered.Value ?? 0);
            }
        },
        iter: Cases);

    [Fact]
    public void A_circle_within_one_minute_is_taken_to_begin_at_its_heaviest_weight()
    {
        // 555 g in and 555 g out again in the same minute: in or out first is not in the record.
        var story = Story.Of([(2, 0, 4, 185, 0, 0, 1), (2, 1, 3, 100, 0, 0, 0)], drifts: false);

        Assert.All(
            [story.Ledger(shuffled: false), story.Ledger(shuffled: true)],
            ledger => Assert.Equal((5_555, 5_555), (ledger.Balances().Cylinders["C"].Opening.Value, ledger.Balances().Cylinders["C"].Remaining.Value)));
    }

    [Fact]
    public void Ledgers_with_drift_account_for_every_gram_and_are_never_negative() => Steps.Sample(
        steps =>
        {
            foreach (var c in Story.Of(steps, drifts: true).Ledger(shuffled: true).Balances().Cylinders.Values)
            {
                Assert.Equal(
                    c.Remaining.Value,
                    c.Opening.Value - c.Charged.Value - c.HoseLoss.Value - c.TransferredOut.Value + c.Recovered.Value + c.TransferredIn.Value + c.Unexplained.Value);
                Assert.All([c.Opening, c.Charged, c.Recovered, c.HoseLoss, c.TransferredIn, c.TransferredOut, c.Remaining], g => Assert.True(g >= Grams.Zero));
            }
        },
        iter: Cases);

    [Fact]
    public void The_order_of_arrival_is_irrelevant_to_everything() => Steps.Sample(
        steps =>
        {
            var story = Story.Of(steps, drifts: true);
            var (one, other) = (story.Ledger(shuffled: false).Balances(), story.Ledger(shuffled: true).Balances());
            Assert.Equal(one.Gaps.AsEnumerable(), other.Gaps.AsEnumerable());
            Assert.Equal(one.TransferLoss, other.TransferLoss);
            Assert.Equal(one.Assets.Values, other.Assets.Values);
            Assert.Equal(one.Mixes.Select(m => m.Entry), other.Mixes.Select(m => m.Entry));
            Assert.Equal(
                one.Cylinders.Values.Select(c => (c.Tag, c.Opening, c.Unexplained, c.Remaining, string.Join(' ', c.Refrigerants))),
                other.Cylinders.Values.Select(c => (c.Tag, c.Opening, c.Unexplained, c.Remaining, string.Join(' ', c.Refrigerants))));
        },
        iter: Cases);

    private sealed record Story(List<(CylinderEntry Entry, int Rank)> Entries, Dictionary<string, long> Contents, Dictionary<string, long> Charged, Dictionary<string, long> Recovered)
    {
        private const long Tare = 4_000;

        public static Story Of((int Cylinder, int Asset, int Purpose, int Share, int Minutes, int Drift, int Rank)[] steps, bool drifts)
        {
            var story = new Story([], Tags.ToDictionary(t => t, _ => 5_000L), Assets.ToDictionary(a => a, _ => 0L), Assets.ToDictionary(a => a, _ => 0L));
            var at = new DateTimeOffset(2026, 1, 5, 7, 0, 0, TimeSpan.Zero);
            foreach (var step in steps)
            {
                at = at.AddMinutes(step.Minutes);
                story.Add(step.Cylinder, step.Asset, step.Purpose, step.Share, at, drifts ? step.Drift : 0, step.Rank);
            }

            return story;
        }

        /// <summary>Whether what moved into and out of the cylinder cancels within each minute.</summary>
        public bool IsCircle(string tag) => Entries.Where(e => e.Entry.Tag == tag).GroupBy(e => e.Entry.At).All(moment => moment.Sum(e => e.Entry.Gain.Value) == 0);

        public CylinderLedger Ledger(bool shuffled)
        {
            var house = Tags.Aggregate(CylinderLedger.Empty, (l, t) => l.With(new Cylinder(t, CylinderKind.Recovery, null, new Grams(Tare))));
            var entries = shuffled ? Entries.OrderBy(e => e.Rank) : Entries.AsEnumerable();
            return entries.Aggregate(house, (ledger, e) =>
            {
                var admission = ledger.Admit(e.Entry, _ => null);
                Assert.Null(admission.Refusal);
                return admission.Ledger;
            });
        }

        private void Add(int cylinder, int asset, int purpose, int share, DateTimeOffset at, int drift, int rank)
        {
            var tag = Tags[cylinder];
            var before = Math.Max(0, Contents[tag] + drift);
            var moved = (purpose is 1 or 4 ? 3_000 : before) * share / 1000;
            var after = purpose is 1 or 4 ? before + moved : before - moved;
            Contents[tag] = after;
            if (purpose == 0)
            {
                Charged[Assets[asset]] += moved;
            }
            else if (purpose == 1)
            {
                Recovered[Assets[asset]] += moved;
            }

            Entries.Add((new CylinderEntry
            {
                Id = $"{Entries.Count}",
                At = at,
                By = "tech",
                Tag = tag,
                Tare = new Grams(Tare),
                GrossBefore = new Grams(Tare + before),
                GrossAfter = new Grams(Tare + after),
                Purpose = purpose switch { 0 => EntryPurpose.Charge, 1 => EntryPurpose.Recover, 2 => EntryPurpose.HoseLoss, _ => EntryPurpose.Transfer },
                AssetId = purpose is 0 or 1 ? Assets[asset] : null,
                Refrigerant = asset == 0 ? "R448A" : "R404A",
            }, rank));
        }
    }
}
