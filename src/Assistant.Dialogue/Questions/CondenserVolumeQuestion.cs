using Assistant.Dialogue.Replies;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Dialogue.Questions;

/// <summary>"36 tubes 2 m long 8 mm bore": what a condenser holds whose volume stands on no plate (<see cref="CondenserVolume"/>).</summary>
internal static class CondenserVolumeQuestion
{
    public static Answer Answer(Asked asked)
    {
        var lengths = asked.Arguments.Numbers.Where(n => n.Unit?.Dimension == Dimension.Length).Select(n => Length.FromMeters(n.Unit!.ToCanonical(n.Value))).Order().ToList();
        var counts = asked.Arguments.Numbers.Where(n => n is { Unit: null, Fact: null, Value: >= 1 and <= 10_000 } && double.IsInteger(n.Value)).ToList();
        if (lengths is not [var bore, var length] || counts is not [var tubes])
        {
            return new(Phrase.Empty, [], asked.Say("answer.condenser.needs"));
        }

        var volume = CondenserVolume.FromTubes((int)tubes.Value, length, bore);
        return Asked.Because(asked.Say("answer.condenser.holds", ("volume", new Amount(volume.CubicMeters, Dimension.Volume))), asked.Say("answer.condenser.bends"));
    }
}
