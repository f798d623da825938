using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Questions;

/// <summary>"What should the head pressure valve be set at", "what setpoint should I use for a cooler".</summary>
internal static class SetpointQuestion
{
    // FDA Food Code 3-501.16: cold food is kept at 41 degF (5 degC) or below.
    private static readonly CelsiusTemperature ColdFood = new(5);

    public static Answer Answer(Asked asked) =>
        asked.Arguments.About == FactCatalogue.HeadPressureControlSetting || asked.Arguments.About == FactCatalogue.DischargePressure ? HeadControl(asked) : Box(asked);

    private static Answer Box(Asked asked)
    {
        var food = asked.Say("answer.setpoint.food", ("limit", ColdFood));
        return asked.Facts.Word(FactCatalogue.Application) switch
        {
            "cooler" => Asked.Because(asked.Say("answer.setpoint.cooler", ("low", Fahrenheit(35)), ("high", Fahrenheit(38))), food),
            "freezer" => Asked.Because(asked.Say("answer.setpoint.freezer", ("low", Fahrenheit(-10)), ("high", Fahrenheit(0))), food),
            _ => Asked.Because(asked.Say("answer.setpoint.either", ("low", Fahrenheit(35)), ("high", Fahrenheit(38)), ("freezer_low", Fahrenheit(-10)), ("freezer_high", Fahrenheit(0))), food),
        };
    }

    private static Answer HeadControl(Asked asked)
    {
        if (asked.Refrigerant is not { } refrigerant)
        {
            return asked.NeedsRefrigerant();
        }

        var recorded = HeldHead.Of(asked.Facts, refrigerant);
        var held = recorded ?? MinimumAmbient.UsualCondensing;
        if (!refrigerant.Saturation.TryDewPressure(held, out var dew) || !refrigerant.Saturation.TryBubblePressure(held, out var bubble))
        {
            return asked.OutOfTable(refrigerant);
        }

        return Asked.Because(
            asked.Say(recorded is null ? "answer.setpoint.head-usual" : "answer.setpoint.head-record", ("pressure", asked.Gauge(dew)), ("held", held), ("refrigerant", refrigerant.Designation)),
            Asked.HasGlide(refrigerant, dew) ? asked.Say("answer.setpoint.head-bubble", ("held", held), ("bubble", asked.Gauge(bubble))) : null,
            asked.Say("answer.setpoint.head-maker"));
    }

    private static CelsiusTemperature Fahrenheit(double degrees) => new((degrees - 32) * 5 / 9);
}
