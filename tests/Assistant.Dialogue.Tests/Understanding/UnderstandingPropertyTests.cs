using System.Diagnostics;
using System.Globalization;
using System.Text;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using CsCheck;

namespace Assistant.Dialogue.Tests.Understanding;

public sealed class UnderstandingPropertyTests
{
    private static readonly string[] Ones = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"];
    private static readonly string[] Tens = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

    private static readonly (string Word, string Unit)[] Pressures =
        [("psi", "psig"), ("PSIG", "psig"), ("pounds", "psig"), ("lbs", "psig"), ("#", "psig"), ("bar", "bar"), ("barg", "bar"), ("kPa", "kPa"), ("psia", "psia"), ("bar abs", "bara")];

    private static readonly string[] Carriers = ["", "it's ", "it is at ", "um about ", "reading ", "I've got ", "showing "];

    private static readonly (Fact Fact, string Name, string Said, double Canonical)[] Told =
    [
        (FactCatalogue.SuctionPressure, "suction", "22 psi", 151.6847),
        (FactCatalogue.DischargePressure, "head", "201 psi", 1385.8462),
        (FactCatalogue.AmbientTemperature, "ambient", "95F", 35),
        (FactCatalogue.LiquidLineTemperature, "liquid line", "86", 30),
        (FactCatalogue.Setpoint, "setpoint", "-10", -23.3333),
        (FactCatalogue.CompressorCurrent, "compressor amps", "8.2", 8.2),
        (FactCatalogue.Superheat, "superheat", "9", 5),
        (FactCatalogue.CylinderTare, "tare", "16 lb", 7.2575),
    ];

    [Fact]
    public void A_whole_number_is_read_the_same_in_digits_and_in_every_spoken_form()
    {
        Gen.Select(Gen.Int[0, 999], Gen.Int[0, 2], Pick(Carriers)).Sample((value, form, carrier) =>
        {
            var said = form == 0 ? value.ToString(CultureInfo.InvariantCulture) : form == 1 ? Cardinal(value) : AsTheTradeSays(value);
            var reading = Assert.Single(Read($"{carrier}{said}", FactCatalogue.DischargePressure).Readings);
            Assert.Equal(value, reading.Value);
        }, iter: 3000);
    }

    [Fact]
    public void A_reading_said_in_any_unit_and_spelling_gives_the_value_back()
    {
        Gen.Select(Gen.Int[1, 400], Gen.Int[0, 9], Pick(Pressures), Gen.Bool, Pick(Carriers)).Sample((whole, tenths, unit, spaced, carrier) =>
        {
            var value = unit.Unit is "bar" or "bara" ? whole / 10.0 : whole + (tenths / 10.0);
            var said = string.Create(CultureInfo.InvariantCulture, $"{carrier}{value}{(spaced ? " " : "")}{unit.Word}");
            var reading = Assert.Single(Read(said, FactCatalogue.DischargePressure).Readings);
            Assert.Equal((value, unit.Unit), (reading.Value, reading.Unit.Symbol));
        }, iter: 3000);
    }

    [Fact]
    public void A_temperature_below_zero_is_negative_however_it_is_said()
    {
        Gen.Select(Gen.Int[1, 60], Gen.Int[0, 5]).Sample((value, form) =>
        {
            var said = form switch { 0 => $"-{value}", 1 => $"minus {Cardinal(value)}", 2 => $"negative {value} F", 3 => $"{value} below", 4 => $"{Cardinal(value)} below zero", _ => $"– {value}" };
            Assert.Equal(-value, Assert.Single(Read(said, FactCatalogue.BoxTemperature).Readings).Value);
        }, iter: 500);
    }

    [Fact]
    public void Pounds_and_ounces_are_decimal_pounds()
    {
        Gen.Select(Gen.Int[0, 40], Gen.Int[0, 15]).Sample((pounds, ounces) =>
        {
            var reading = Assert.Single(Read($"{pounds} lb {ounces} oz", FactCatalogue.ChargeAdded).Readings);
            Assert.Equal(pounds + (ounces / 16.0), reading.Value, 9);
        }, iter: 500);
    }

    [Fact]
    public void The_order_of_readings_does_not_matter()
    {
        Gen.Shuffle(Told).Select(Gen.Int[2, Told.Length], (order, count) => order.Take(count).ToArray()).Sample(told =>
        {
            var text = string.Join(", ", told.Select(t => $"{t.Name} {t.Said}"));
            var got = Read(text, FactCatalogue.SuctionPressure).Readings.ToDictionary(r => r.Fact, r => Math.Round(r.Canonical, 4));
            Assert.Equal(told.Length, got.Count);
            Assert.All(told, t => Assert.Equal(t.Canonical, got[t.Fact]));
        }, iter: 1000);
    }

    [Fact]
    public void Every_number_that_is_taken_stands_in_the_text()
    {
        Messages().Sample(message =>
        {
            var spoken = Corpus.NumbersIn(message.Text);
            Assert.All(Read(message.Text, message.Asked).Readings, r => Assert.True(spoken.Contains(Math.Abs(r.Value)), $"{r.Value} in '{message.Text}'"));
        }, iter: 2000);
    }

    [Fact]
    public void No_message_breaks_it_or_takes_longer_than_fifty_milliseconds()
    {
        Read("warm up 22 psi", FactCatalogue.SuctionPressure);
        var clock = Stopwatch.StartNew();
        var slow = new List<string>();
        Messages().Sample(
            message =>
            {
                var start = Stopwatch.GetTimestamp();
                Read(message.Text, message.Asked);
                if (Stopwatch.GetElapsedTime(start) > TimeSpan.FromMilliseconds(50))
                {
                    // A busy machine stops a thread now and then: what is slow is slow again.
                    var again = Stopwatch.GetTimestamp();
                    Read(message.Text, message.Asked);
                    lock (slow)
                    {
                        if (Stopwatch.GetElapsedTime(again) > TimeSpan.FromMilliseconds(50))
                        {
                            slow.Add(message.Text);
                        }
                    }
                }
            },
            iter: 200_000);
        Assert.Empty(slow);
        Assert.True(clock.Elapsed < TimeSpan.FromMinutes(1));
    }

    [Theory]
    [InlineData("suction 22 head 201 ")]
    [InlineData("one ")]
    [InlineData("22 ")]
    [InlineData("- ")]
    [InlineData("what should my superheat be ")]
    [InlineData("not ")]
    [InlineData("suction ")]
    [InlineData("and a half ")]
    [InlineData("five eighths ")]
    [InlineData("((((((")]
    [InlineData("9999999999")]
    [InlineData("suction 22. ")]
    [InlineData("a,")]
    public void Ten_thousand_characters_of_one_thing_are_read_within_fifty_milliseconds(string piece)
    {
        var text = new StringBuilder().Insert(0, piece, (10_000 / piece.Length) + 1).ToString();
        Read(text, FactCatalogue.SuctionPressure);
        var fastest = TimeSpan.MaxValue;

        // The fastest of many counts: a busy machine is no fault of the reading.
        for (var i = 0; i < 200 && fastest >= TimeSpan.FromMilliseconds(50); i++)
        {
            var start = Stopwatch.GetTimestamp();
            Read(text, FactCatalogue.SuctionPressure);
            var taken = Stopwatch.GetElapsedTime(start);
            fastest = taken < fastest ? taken : fastest;
        }

        Assert.True(fastest < TimeSpan.FromMilliseconds(50), $"{fastest.TotalMilliseconds} ms");
    }

    private static Gen<(string Text, Fact? Asked)> Messages()
    {
        var asked = Gen.OneOf(Gen.Bool.Select(_ => (Fact?)null), Gen.Int[0, FactCatalogue.All.Count - 1].Select(i => (Fact?)FactCatalogue.All[i]));
        var line = Pick(Corpus.Lines);
        var text = Gen.OneOf(
            line,
            Gen.Select(line, Gen.Int[0, 200], Gen.Char[' ', '~'], (l, at, c) => l.Length == 0 ? l : l.Remove(at % l.Length, 1).Insert(at % l.Length, c.ToString())),
            Gen.Select(line, line, (a, b) => a + " " + b),
            Gen.Select(line, line, (a, b) => a[..(a.Length / 2)] + b[(b.Length / 2)..]),
            Pick(Corpus.Words).List[0, 30].Select(w => string.Join(' ', w)),
            Gen.String[0, 60]);
        return Gen.Select(text, asked);
    }

    private static Gen<T> Pick<T>(T[] from) => Gen.Int[0, from.Length - 1].Select(i => from[i]);

    private static Understood Read(string text, Fact? asked) => LexiconFiles.Understander.Understand(text, new(asked, UnitSystem.Us));

    private static string Cardinal(int value) => value switch
    {
        < 20 => Ones[value],
        < 100 => Tens[value / 10] + (value % 10 == 0 ? "" : " " + Ones[value % 10]),
        _ => $"{Ones[value / 100]} hundred" + (value % 100 == 0 ? "" : $" and {Cardinal(value % 100)}"),
    };

    private static string AsTheTradeSays(int value) => value switch
    {
        < 100 => Cardinal(value),
        _ when value % 100 == 0 => Cardinal(value),
        _ when value % 100 < 10 => $"{Ones[value / 100]} oh {Ones[value % 100]}",
        _ => $"{Ones[value / 100]} {Cardinal(value % 100)}",
    };
}
