using System.Globalization;
using Assistant.Trade.Ledgers;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Replies;

/// <summary>A mass as a scale shows it: "48 lb 6 oz" to a tenth of an ounce, or kilograms and grams.</summary>
public static class MassText
{
    public static string Written(Grams mass, UnitSystem units)
    {
        if (units != UnitSystem.Us)
        {
            return Math.Abs(mass.Value) < 1000
                ? string.Create(CultureInfo.InvariantCulture, $"{mass.Value} g")
                : string.Create(CultureInfo.InvariantCulture, $"{mass.Value / 1000.0:0.###} kg");
        }

        var ounces = Math.Round(UnitOfMeasure.Ounce.FromCanonical(Math.Abs(mass.Value) / 1000.0), 1, MidpointRounding.AwayFromZero);
        var (pounds, rest) = (Math.Floor(ounces / 16), Math.Round(ounces % 16, 1));
        var sign = mass.Value < 0 ? "-" : "";
        return pounds == 0 ? string.Create(CultureInfo.InvariantCulture, $"{sign}{rest:0.#} oz")
            : rest == 0 ? string.Create(CultureInfo.InvariantCulture, $"{sign}{pounds:0} lb")
            : string.Create(CultureInfo.InvariantCulture, $"{sign}{pounds:0} lb {rest:0.#} oz");
    }
}
