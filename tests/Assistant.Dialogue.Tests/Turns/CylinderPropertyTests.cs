using System.Globalization;
using Assistant.Dialogue.Tests.Understanding;
using Assistant.Dialogue.Visits;
using CsCheck;

namespace Assistant.Dialogue.Tests.Turns;

/// <summary>Whatever is said of cylinders, in whatever order: what the ledger takes balances, and nobody is asked two things at once.</summary>
public sealed class CylinderPropertyTests
{
    private static readonly Gen<string> Mass = Gen.Select(Gen.Int[0, 60], Gen.Int[0, 15], Gen.Bool).Select((lb, oz, us) => us ? $"{lb} lb {oz} oz" : string.Create(CultureInfo.InvariantCulture, $"{lb / 2.0:0.0} kg"));

    private static readonly Gen<string> Line = Gen.OneOf(
        Gen.Select(OneOf("14", "R3"), Mass, Mass).Select((tag, tare, gross) => $"cylinder {tag}, tare {tare}, weighs {gross}"),
        Mass.Select(m => $"now {m}"),
        Mass.Select(m => $"tare {m}"),
        Gen.Select(OneOf("14", "R3"), Mass).Select((tag, m) => $"charged {m} from cylinder {tag}"),
        Gen.Select(Mass, Mass).Select((before, after) => $"recovered into tank R3, before {before}, after {after}"),
        Mass.Select(m => $"hose loss {m}"),
        Mass,
        OneOf("skip", "undo", "charged", "recovered", "R448A", "don't know", "14", "suction 24 psi"));

    private static Gen<string> OneOf(params string[] texts) => Gen.Int[0, texts.Length - 1].Select(i => texts[i]);

    [Fact]
    public void What_is_taken_balances_to_the_gram() => Line.Array[1, 14].Sample(
        lines =>
        {
            var talk = new Conversation(LexiconFiles.Understander.Understand);
            foreach (var line in lines)
            {
                talk.Say(line);
            }

            var balances = talk.State.Cylinders.Ledger("this visit").Balances();
            Assert.All(balances.Cylinders.Values, c =>
            {
                Assert.Equal(c.Remaining, c.Opening - c.Charged - c.HoseLoss - c.TransferredOut + c.Recovered + c.TransferredIn + c.Unexplained);
                Assert.True(c.Remaining.Value >= 0);
            });
            Assert.Equal(talk.State.Cylinders.Uses.Count(), talk.State.Cylinders.Ledger("this visit").Entries.Count());
            Assert.Equal(VisitState.Fold(talk.Log).Cylinders.Current, talk.State.Cylinders.Current);
        },
        iter: 300);
}
