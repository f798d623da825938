using System.Globalization;

namespace Assistant.Channels.Tests.Interleavings;

/// <summary>Something one person says, and who says something while it is being answered.</summary>
/// <param name="After">How long after the one before it is dealt with.</param>
/// <param name="Late">How long it was under way.</param>
/// <param name="IsBroughtTwice">True where the channel brings it again.</param>
/// <param name="IsDelivered">True where its reply reaches the speaker before anything else is said.</param>
/// <param name="Meanwhile">Said and answered while this one is being made up, before it is stored.</param>
internal sealed record CrewLine(string Person, string Text, double? Value, TimeSpan After, TimeSpan Late, bool IsBroughtTwice, bool IsDelivered, CrewLine? Meanwhile);

/// <summary>What three people say on one visit and in which order, by a seed: the same seed gives the same lines.</summary>
internal static class CrewScript
{
    public const string OnSite = "Sam";
    public const string Helping = "Lee";
    public const string Office = "Kim";

    public static readonly string[] People = [OnSite, Helping, Office];

    private const int Lines = 6;

    private static readonly (string Words, int Least, int Span)[] Readings =
    [
        ("box {0} F", 38, 14), ("second thermometer {0} F", 38, 14), ("suction {0} psi", 20, 30), ("suction {0} psi", 20, 30), ("head {0} psi", 190, 60),
        ("ambient {0} F", 70, 25), ("liquid line {0} F", 75, 20), ("product {0} F", 37, 8),
    ];

    private static readonly string[] Others =
    [
        "ok", "status", "who", "why", "repeat", "skip", "undo", "r404a", "cooler", "ask for the oil level", "ask for the product temperature", "never mind the oil level", "read the head again", "ask for the suction pressure", "ask for the box temperature",
        "watch", "stop watching", "leave", "handover to Lee", "handover to Sam", "mine", "Sam", "sight glass clear", "sight glass flashing", "all evaporator fans running", "what was the head again",
    ];

    public static IReadOnlyList<CrewLine> Of(int seed)
    {
        var chance = new Random(seed);
        var used = new HashSet<double>();
        return [.. Enumerable.Range(0, Lines).Select(_ => Line(chance, used, People))];
    }

    private static CrewLine Line(Random chance, HashSet<double> used, string[] people)
    {
        var person = people[chance.Next(people.Length)];
        var others = Array.FindAll(people, p => p != person);
        var (text, value) = chance.NextDouble() < 0.6 ? Reading(chance, used) : (Others[chance.Next(Others.Length)], null);
        var isLate = person != Office && chance.NextDouble() < 0.4;
        return new(
            person,
            text,
            value,
            TimeSpan.FromSeconds(chance.Next(1, 90)),
            TimeSpan.FromSeconds(isLate ? chance.Next(1, 180) : 0),
            chance.NextDouble() < 0.2,
            chance.NextDouble() < 0.7,
            others.Length > 0 && chance.NextDouble() < 0.35 ? Line(chance, used, others) : null);
    }

    // No two say the same number, so that each can be found again.
    private static (string, double?) Reading(Random chance, HashSet<double> used)
    {
        var (words, least, span) = Readings[chance.Next(Readings.Length)];
        double value;
        do
        {
            value = Math.Round(least + chance.Next(span) + (chance.Next(1, 10) / 10.0), 1);
        }
        while (!used.Add(value));

        return (string.Format(CultureInfo.InvariantCulture, words, value), value);
    }
}
