using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules.Derivation;
using Assistant.Trade.Rules.Evidence;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Symptom;

namespace Assistant.Trade.Rules;

/// <summary>Puts a symptom into words: the key of its sentence, and the numbers it rests on.</summary>
internal static class Reasons
{
    private static readonly (string Low, string Normal, string High)[] Levels =
        [.. Enum.GetValues<Symptom>().Select(s => ($"reason.{Codes.KebabOf(s.ToString())}-low", $"reason.{Codes.KebabOf(s.ToString())}-normal", $"reason.{Codes.KebabOf(s.ToString())}-high"))];

    private static readonly Reason[][] SeenReasons = [.. Enum.GetValues<Symptom>().Select(OfWords)];

    /// <summary>Every key a reason of the rules may carry, for the phrase book to be checked against.</summary>
    public static IEnumerable<string> Keys =>
        Enum.GetValues<Symptom>().SelectMany(s => FactOf(s) is null
            ? [Levels[(int)s].Low, Levels[(int)s].Normal, Levels[(int)s].High]
            : SeenReasons[(int)s].Select(r => r.Key))
        .Concat(new[] { HeadOverUsual, ControlDueUsually }.SelectMany(k => new[] { $"reason.{k}-low", $"reason.{k}-normal", $"reason.{k}-high" }));

    /// <param name="isInOrder">True where the number speaks for a sound plant: what fits within its error is not called low or high.</param>
    public static Reason Of(Symptom symptom, PlantState state, Measure measure, bool isInOrder = false)
    {
        if (SeenReasons[(int)symptom] is { Length: > 0 } words)
        {
            return words[(int)measure.Value];
        }

        var (low, normal, high) = Levels[(int)symptom];
        var (least, most) = Usual(symptom);
        if (isInOrder && Healthy.Of(symptom) is not null)
        {
            return Numbers(normal, symptom, state, measure.Value);
        }

        return Numbers(measure.Value < least ? low : measure.Value > most ? high : normal, symptom, state, measure.Value);
    }

    // What is set usually is not said to be set here.
    private static string OfTheSetting(string key, PlantState state) =>
        state.Facts.Has(FactCatalogue.HeadPressureControlSetting) ? key : key.Replace("head-over-setting", HeadOverUsual, StringComparison.Ordinal).Replace("control-due", ControlDueUsually, StringComparison.Ordinal);

    private const string HeadOverUsual = "head-over-usual-setting";
    private const string ControlDueUsually = "control-due-usually";

    // Between which a number is called usual: as a sound plant shows it, or where no plant is usual, as the words of its sentences part.
    private static (double Least, double Most) Usual(Symptom symptom) => symptom switch
    {
        BoxOverCall => (RoomLimits.OverCall.Kelvins, RoomLimits.OverCall.Kelvins),
        RestingGap => (StandingLimits.Equal.Kelvins, double.PositiveInfinity),
        RestingTd => (StandingLimits.PumpedDown.Kelvins, StandingLimits.NothingLetIn.Kelvins),
        ProductOverBox => (-RoomLimits.CameInWarm.Kelvins, RoomLimits.CameInWarm.Kelvins),
        EqualisedOverColdest => (StandingLimits.NoLiquidLeft.Kelvins, -StandingLimits.NoLiquidLeft.Kelvins),
        _ => Healthy.Of(symptom) is { } healthy ? (healthy.Low, healthy.High) : (double.NegativeInfinity, double.PositiveInfinity),
    };

    /// <summary>The fact whose word the symptom is, or null for a symptom that is a number.</summary>
    public static Fact? FactOf(Symptom symptom) => symptom switch
    {
        SightGlass => FactCatalogue.SightGlass,
        CoilIce => FactCatalogue.CoilIce,
        EvaporatorFans => FactCatalogue.EvaporatorFans,
        CondenserCoil => FactCatalogue.CondenserCoil,
        CondenserFans => FactCatalogue.CondenserFans,
        Symptom.Compressor => FactCatalogue.Compressor,
        Calling => FactCatalogue.CallingForCooling,
        Solenoid => FactCatalogue.SolenoidEnergised,
        Defrost => FactCatalogue.DefrostActive,
        Door => FactCatalogue.DoorCondition,
        HeadControl => FactCatalogue.HeadPressureControl,
        LiquidLineFeel => FactCatalogue.LiquidLineFeel,
        PullingDown => FactCatalogue.PullingDown,
        _ => null,
    };

    private static Reason Numbers(string key, Symptom symptom, PlantState state, double value) => symptom switch
    {
        SuperheatExcess => new(key, ("superheat", Kelvins(Derivations.Superheat(state, out _).Value)), ("expected", Kelvins(state.UsualSuperheat))),
        Subcooling => new(key, ("subcooling", Kelvins(value))),
        HeadExcess when !state.Condensing.IsKnown || !state.Ambient.IsKnown => SplitOnly(key, state, value),
        HeadExcess => new(key, ("condensing", Degrees(state.Condensing.Value)), ("expected", Degrees(state.Condensing.Value - value)), ("ambient", Degrees(state.Ambient.Value))),
        HeadOverSetting => new(OfTheSetting(key, state), ("condensing", Degrees(state.Condensing.Value)), ("setting", Degrees(state.Setting.Value))),
        SplitShare => new(key, ("split", Kelvins(Derivations.Split(state).Value)), ("expected", Kelvins(Derivations.Split(state).Value / value))),
        ControlDue => new(OfTheSetting(key, state), ("ambient", Degrees(state.Ambient.Value)), ("setting", Degrees(state.Setting.Value))),
        ColdSplitExcess => new(key, ("split", Kelvins(Derivations.Split(state).Value)), ("design", Kelvins(state.DesignSplit))),
        TdShare => new(key, ("td", Kelvins(Derivations.Td(state).Value)), ("design", Kelvins(state.DesignTd))),
        AirShare => new(key, ("drop", Kelvins((state.Temperature(FactCatalogue.EvaporatorAirIn) - state.Temperature(FactCatalogue.EvaporatorAirOut)).Value)), ("td", Kelvins(Derivations.Td(state).Value))),
        DrierDrop or LiquidLineDrop => new(key, ("drop", Kelvins(value))),
        StandingExcess => new(key, ("standing", Degrees(state.Ambient.Value + value)), ("ambient", Degrees(state.Ambient.Value))),
        CompressorSuperheat => new(key, ("superheat", Kelvins(value))),
        ValveDemand => new(key, ("share", new Amount(value, Dimension.Ratio))),
        CurrentShare => new(key, ("share", new Amount(value, Dimension.Ratio))),
        CompressorEfficiency => new(key, ("share", new Amount(value, Dimension.Ratio))),
        BoxOverCall => new(key, ("box", Degrees(state.Degrees(FactCatalogue.BoxTemperature) ?? 0)), ("over", Kelvins(value))),
        BoxOverSetpoint => new(key, ("box", Degrees(state.Degrees(FactCatalogue.BoxTemperature) ?? 0)), ("setpoint", Degrees(state.Degrees(FactCatalogue.Setpoint) ?? 0))),
        ThermometerGap => new(key, ("gap", Kelvins(value))),
        SettingExcess => new(key, ("setpoint", Degrees(state.Degrees(FactCatalogue.Setpoint) ?? 0)), ("differential", Kelvins(state.Facts.Difference(FactCatalogue.Differential)?.Kelvins ?? TradeValues.Differential.Kelvins)), ("limit", Degrees(state.WarmestBox))),
        RestingGap => new(key, ("low", Degrees(state.Suction.Value)), ("high", Degrees(state.Condensing.Value))),
        RestingTd => new(key, ("suction", Degrees(state.Suction.Value)), ("box", Degrees(state.BoxAir.Value))),
        HighSideOverAmbient => new(key, ("condensing", Degrees(state.Condensing.Value)), ("ambient", Degrees(state.Ambient.Value))),
        ProductOverBox => new(key, ("product", Degrees(state.Degrees(FactCatalogue.ProductTemperature) ?? 0)), ("box", Degrees(state.BoxAir.Value))),
        EqualisedOverColdest => new(key, ("standing", Degrees(value + state.Coldest.Value)), ("coldest", Degrees(state.Coldest.Value))),
        _ => new(key),
    };

    // A split said outright comes without the temperatures it lies between.
    private static Reason SplitOnly(string key, PlantState state, double value)
    {
        var split = Derivations.Split(state).Value;
        var levels = Levels[(int)SplitShare];
        var same = key == Levels[(int)HeadExcess].Low ? levels.Low : key == Levels[(int)HeadExcess].High ? levels.High : levels.Normal;
        return new(same, ("split", Kelvins(split)), ("expected", Kelvins(split - value)));
    }

    private static Amount Kelvins(double kelvins) => new(kelvins, Dimension.TemperatureDifference);

    private static Amount Degrees(double degrees) => new(degrees, Dimension.Temperature);

    private static Reason[] OfWords(Symptom symptom) =>
        FactOf(symptom) is { } fact ? [.. fact.Choices.Select(c => new Reason($"reason.{Codes.KebabOf(symptom.ToString())}-{c}"))] : [];
}
