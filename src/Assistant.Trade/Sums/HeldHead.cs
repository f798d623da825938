using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;

namespace Assistant.Trade.Sums;

/// <summary>The head that a head pressure control is set to hold.</summary>
public static class HeldHead
{
    /// <summary>
    /// The setting as a dew temperature: a pressure by its dew point at the site's barometer, degrees as they stand, or over the bubble
    /// pressure where the record's basis is bubble. Null without a control, a setting, or within the table.
    /// </summary>
    public static CelsiusTemperature? Of(FactSet facts, Refrigerant refrigerant)
    {
        if (facts.Is(FactCatalogue.HeadPressureControl, "none"))
        {
            return null;
        }

        var table = refrigerant.Saturation;
        if (facts.Pressure(FactCatalogue.HeadPressureControlSetting) is { } pressure)
        {
            return table.TryDewTemperature(pressure, out var dew) ? dew : null;
        }

        if (facts.Temperature(FactCatalogue.HeadPressureControlSetting) is not { } degrees || !facts.Is(FactCatalogue.SaturationBasis, "bubble"))
        {
            return facts.Temperature(FactCatalogue.HeadPressureControlSetting);
        }

        return table.TryBubblePressure(degrees, out var held) && table.TryDewTemperature(held, out var atDew) ? atDew : null;
    }
}
