using UnitsNet;

namespace Assistant.Trade.Ledgers;

/// <summary>
/// A mass in whole grams. A scale reading is rounded once, when it enters the ledger; every sum after that is exact,
/// so that a balance closes to the gram or does not close.
/// </summary>
public readonly record struct Grams(long Value) : IComparable<Grams>
{
    public static Grams Zero { get; }

    /// <summary>The nearest whole gram, halves away from zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The mass is beyond a thousand tonnes.</exception>
    public static Grams From(Mass mass)
    {
        var grams = mass.Grams;
        if (Math.Abs(grams) > 1e9)
        {
            throw new ArgumentOutOfRangeException(nameof(mass), grams, "a cylinder or a charge weighs at most 1e9 g");
        }

        return new Grams((long)Math.Round(grams, MidpointRounding.AwayFromZero));
    }

    public Mass ToMass() => Mass.FromGrams(Value);

    public int CompareTo(Grams other) => Value.CompareTo(other.Value);

    public static Grams operator +(Grams left, Grams right) => new(checked(left.Value + right.Value));
    public static Grams operator -(Grams left, Grams right) => new(checked(left.Value - right.Value));
    public static bool operator <(Grams left, Grams right) => left.Value < right.Value;
    public static bool operator >(Grams left, Grams right) => left.Value > right.Value;
    public static bool operator <=(Grams left, Grams right) => left.Value <= right.Value;
    public static bool operator >=(Grams left, Grams right) => left.Value >= right.Value;

    public static Grams Add(Grams left, Grams right) => left + right;
    public static Grams Subtract(Grams left, Grams right) => left - right;

    public override string ToString() => $"{Value} g";
}
