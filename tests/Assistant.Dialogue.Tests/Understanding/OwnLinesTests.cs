using System.Globalization;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Understanding;

/// <summary>Lines of our own beside the corpus, several a rule, with what each must mean.</summary>
public sealed class OwnLinesTests
{
    public static TheoryData<string, string, string, string> Lines
    {
        get
        {
            var data = new TheoryData<string, string, string, string>();
            foreach (var line in File.ReadLines(Path.Combine(LexiconFiles.Root, "tests", "data", "utterances", "own-lines.txt")))
            {
                if (line.Split(" | ") is [var site, var fact, var text, var meaning])
                {
                    data.Add(site, fact, text, meaning);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Lines))]
    public void A_line_means_what_stands_beside_it(string site, string fact, string text, string meaning)
    {
        var understood = LexiconFiles.Understander.Understand(text, new(FactCatalogue.Find(fact), site == "metric" ? UnitSystem.Metric : UnitSystem.Us));

        Assert.Equal(meaning.Split(';').Select(p => p.Trim()).Order(StringComparer.Ordinal), Written(understood).Order(StringComparer.Ordinal));
    }

    private static List<string> Written(Understood understood)
    {
        if (understood.Intent == Intent.Unknown)
        {
            return ["-"];
        }

        List<string> parts =
        [
            .. understood.Readings.Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.Fact}={Math.Round(r.Value, 6)} {r.Unit}")),
            .. understood.Observations.Select(o => $"{o.Fact}={o.Value}"),
        ];
        if (understood.Command is not null)
        {
            parts.Add("c:" + understood.Command);
        }

        if (understood.Question is not null)
        {
            parts.Add("q:" + understood.Question);
        }

        if (understood.Clarify is { } open)
        {
            parts.Add("?" + open.ToString().ToLowerInvariant());
        }

        return parts;
    }
}
