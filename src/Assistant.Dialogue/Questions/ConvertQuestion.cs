using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Questions;

/// <summary>"34 F in C", "convert 150 kPa to psi": into the unit asked for, else into its counterpart of the other system.</summary>
internal static class ConvertQuestion
{
    public static Answer Answer(Asked asked)
    {
        if (asked.Arguments.Numbers is not [var number, ..])
        {
            return new(Phrase.Empty, [], asked.Say("answer.convert.number"));
        }

        if (number.Unit is not { } from)
        {
            return new(Phrase.Empty, [], asked.Say("answer.convert.unit", ("value", Number(number.Value))));
        }

        var to = asked.Arguments.TargetUnit ?? Counterpart(from);
        if (Value(number, from, to, asked.Facts.Barometer) is not { } value)
        {
            return asked.Answer("answer.convert.other-kind", ("from", Written(number.Value, from)), ("unit", AmountText.WrittenSymbol(to).Trim()));
        }

        var crossesAtmosphere = from.Dimension == Dimension.Pressure && from.IsAbsolutePressure != to.IsAbsolutePressure;
        return Asked.Because(
            asked.Say("answer.convert", ("from", Written(number.Value, from)), ("to", Written(value, to))),
            crossesAtmosphere ? asked.Say("answer.convert.atmosphere", ("barometer", Written(asked.Facts.Barometer.Pascals / 1000, UnitOfMeasure.Kilopascal))) : null);
    }

    private static double? Value(QuestionNumber number, UnitOfMeasure from, UnitOfMeasure to, AbsolutePressure barometer)
    {
        // A difference and a point share the word "degrees": what was asked of decides.
        to = to.Dimension == from.Dimension ? to : UnitOfMeasure.Find(to.Symbol, from.Dimension) ?? to;
        if (to.Dimension == from.Dimension)
        {
            // The units count absolute pressures from the standard atmosphere, the site from its own.
            var air = UnitOfMeasure.StandardAtmosphereKilopascals - (barometer.Pascals / 1000);
            var shift = from.Dimension != Dimension.Pressure || from.IsAbsolutePressure == to.IsAbsolutePressure ? 0 : from.IsAbsolutePressure ? air : -air;
            return to.FromCanonical(from.ToCanonical(number.Value) + shift);
        }

        return null;
    }

    private static UnitOfMeasure Counterpart(UnitOfMeasure unit) => Counterparts.FirstOrDefault(p => p.From == unit).To ?? unit;

    private static readonly (UnitOfMeasure From, UnitOfMeasure To)[] Counterparts =
    [
        (UnitOfMeasure.Psig, UnitOfMeasure.Bar), (UnitOfMeasure.Bar, UnitOfMeasure.Psig), (UnitOfMeasure.Kilopascal, UnitOfMeasure.Psig),
        (UnitOfMeasure.Megapascal, UnitOfMeasure.Psig), (UnitOfMeasure.Psia, UnitOfMeasure.BarAbsolute), (UnitOfMeasure.BarAbsolute, UnitOfMeasure.Psia),
        (UnitOfMeasure.KilopascalAbsolute, UnitOfMeasure.Psia), (UnitOfMeasure.InchesOfMercuryVacuum, UnitOfMeasure.Bar),
        (UnitOfMeasure.Fahrenheit, UnitOfMeasure.Celsius), (UnitOfMeasure.Celsius, UnitOfMeasure.Fahrenheit),
        (UnitOfMeasure.FahrenheitDifference, UnitOfMeasure.KelvinDifference), (UnitOfMeasure.KelvinDifference, UnitOfMeasure.FahrenheitDifference),
        (UnitOfMeasure.Pound, UnitOfMeasure.Kilogram), (UnitOfMeasure.Kilogram, UnitOfMeasure.Pound),
        (UnitOfMeasure.Ounce, UnitOfMeasure.Gram), (UnitOfMeasure.Gram, UnitOfMeasure.Ounce),
        (UnitOfMeasure.Micron, UnitOfMeasure.Pascal), (UnitOfMeasure.Millitorr, UnitOfMeasure.Pascal), (UnitOfMeasure.Torr, UnitOfMeasure.Millibar),
        (UnitOfMeasure.Millibar, UnitOfMeasure.Micron), (UnitOfMeasure.Pascal, UnitOfMeasure.Micron),
        (UnitOfMeasure.Foot, UnitOfMeasure.Meter), (UnitOfMeasure.Meter, UnitOfMeasure.Foot),
        (UnitOfMeasure.Inch, UnitOfMeasure.Millimeter), (UnitOfMeasure.Millimeter, UnitOfMeasure.Inch),
        (UnitOfMeasure.CubicFoot, UnitOfMeasure.CubicMeter), (UnitOfMeasure.CubicMeter, UnitOfMeasure.CubicFoot), (UnitOfMeasure.Liter, UnitOfMeasure.CubicFoot),
    ];

    private static string Written(double value, UnitOfMeasure unit) => Number(value) + AmountText.WrittenSymbol(unit);

    private static string Number(double value) =>
        Math.Abs(value) switch { >= 100 => value.ToString("0", CultureInfo.InvariantCulture), >= 10 => value.ToString("0.#", CultureInfo.InvariantCulture), >= 1 => value.ToString("0.##", CultureInfo.InvariantCulture), _ => value.ToString("0.####", CultureInfo.InvariantCulture) };
}
