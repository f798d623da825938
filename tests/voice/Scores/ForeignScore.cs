using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Scoring.Kit;

namespace Assistant.Voice.Scoring.Scores;

/// <summary>How much speech that is not for us gets in, per noise.</summary>
internal static class ForeignScore
{
    private static readonly Fact[] Asked = [FactCatalogue.SuctionPressure, FactCatalogue.BoxTemperature, FactCatalogue.CondenserCoil];

    public static void Write(VoiceParts parts)
    {
        Console.WriteLine("## Speech that is not for us\n");
        Console.WriteLine("| noise | utterances | accepted | percent |\n| --- | --- | --- | --- |");
        foreach (var noise in Rooms.All)
        {
            var (all, accepted) = (0, 0);
            foreach (var voice in SyntheticVoice.ForScoring.Concat(SyntheticVoice.Hard))
            {
                foreach (var words in Phrases.Foreign)
                {
                    var fact = Asked[all % Asked.Length];
                    var heard = parts.Recogniser.Hear(FanNoise.Behind(voice.Say(words), noise, 9001 + all), parts.Grammars.For(fact, [], UnitSystem.Us));
                    all++;
                    if (heard.Accepted is not null)
                    {
                        accepted++;
                        Console.Error.WriteLine($"{voice.Name} {Rooms.Name(noise)}: {words} > {heard.Words} ({heard.Fit:0.0})");
                    }
                }
            }

            Console.WriteLine($"| {Rooms.Name(noise)} | {all} | {accepted} | {Rooms.Percent(accepted, all)} |");
        }

        Console.WriteLine();
    }
}
