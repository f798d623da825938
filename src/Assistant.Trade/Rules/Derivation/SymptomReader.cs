using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules.Evidence;
using Assistant.Trade.Rules.Faults;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Symptom;

namespace Assistant.Trade.Rules.Derivation;

/// <summary>Sets the readings against what a healthy plant of this design would read in this weather.</summary>
internal static class SymptomReader
{
    /// <summary>What the flow and the valve's coefficient leave uncertain in its demand.</summary>
    private const double ValveDemandError = 0.08;

    /// <summary>Valves are chosen at least a tenth and up to 40 % above the design duty: common practice.</summary>
    private const double LeastOversize = 1.1;
    private const double MostOversize = 1.4;

    /// <summary>K that the superheat of a wide open valve may stand over the usual.</summary>
    private const double ClimbWhenWideOpen = 8;

    private static readonly (Symptom Symptom, Fact Fact)[] Seen =
        [.. from symptom in Enum.GetValues<Symptom>() let fact = Reasons.FactOf(symptom) where fact is not null select (symptom, fact)];

    public static SymptomTable Read(PlantState state)
    {
        var table = new SymptomTable();
        foreach (var (symptom, fact) in Seen)
        {
            if (state.Facts.Word(fact) is { } word && fact.Choices.IndexOf(word) is >= 0 and var index)
            {
                table[symptom] = new(index, 0);
            }
        }

        if (state.IsPullingDown)
        {
            table[PullingDown] = new(Words.Yes, 0);
        }

        if (state.Rests)
        {
            ReadResting(state, table);
        }
        else
        {
            ReadRunning(state, table);
        }

        ReadBox(state, table);
        ReadStanding(state, table);
        return table;
    }

    private static void ReadStanding(PlantState state, SymptomTable table)
    {
        table[HighSideOverAmbient] = state.BubbleOf(state.DischargePressure) - state.Ambient;
        table[StandingExcess] = state.BubbleOf(state.Facts.Pressure(FactCatalogue.HighSideStandingPressure)) - state.Ambient;
        var equalised = state.DewOf(state.Facts.Pressure(FactCatalogue.StandingPressure));

        // Both gauges alike at rest say the same as a reading taken for it.
        if (!equalised.IsKnown && table[RestingGap] is { IsKnown: true } gap && Math.Abs(gap.Value) <= StandingLimits.Equal.Kelvins)
        {
            equalised = state.Suction;
        }

        table[EqualisedOverColdest] = equalised - state.Coldest;
    }

    private static void ReadResting(PlantState state, SymptomTable table)
    {
        table[RestingGap] = state.Condensing - state.Suction;
        table[RestingTd] = state.BoxAir - state.Suction;
    }

    private static void ReadRunning(PlantState state, SymptomTable table)
    {
        var duty = DutyShare.Of(state);
        ReadLowSide(state, table, duty);
        ReadHead(state, table, duty.Condenser);
        ReadSubcooling(state, table);
        ReadCondenser(state, table);
        table[Symptom.CompressorEfficiency] = CompressorWork.Efficiency(state);
        var atUnit = state.Temperature(FactCatalogue.LiquidLineTemperature);
        table[DrierDrop] = state.Temperature(FactCatalogue.DrierInletTemperature) - state.Temperature(FactCatalogue.DrierOutletTemperature);
        table[LiquidLineDrop] = atUnit - state.Temperature(FactCatalogue.LiquidLineTemperatureAtCoil);
        if (state.Facts.Quantity(FactCatalogue.CompressorCurrent, Dimension.Current) is { } amperes
            && state.Facts.Quantity(FactCatalogue.RatedCurrent, Dimension.Current) is > 0 and var rated)
        {
            table[CurrentShare] = new(amperes / rated, Instruments.CurrentShare);
        }
    }

    // Behind a head pressure valve at work the condenser is left colder than the liquid it is mixed into.
    private static void ReadSubcooling(PlantState state, SymptomTable table)
    {
        var mixes = state.Facts.Is(FactCatalogue.HeadPressureControl, "valve") || table.Knows(HeadOverSetting);
        var subcooling = Derivations.Subcooling(state, outletStands: !mixes);
        table[Subcooling] = state.Facts.Is(FactCatalogue.LiquidReceiver, "no") ? subcooling.Widen(TradeValues.NoReceiverSpread.Kelvins) : subcooling;
    }

    private static void ReadLowSide(PlantState state, SymptomTable table, in DutyShare duty)
    {
        var superheat = Derivations.Superheat(state, out var approximate);
        if (approximate)
        {
            superheat = (superheat + -TradeValues.SuctionLineDrop.Kelvins).Widen(TradeValues.SuctionLineDropSpread.Kelvins);
        }

        if (!double.IsNaN(duty.ValveDemand))
        {
            table[ValveDemand] = new(duty.ValveDemand, duty.ValveDemand * ValveDemandError);
        }

        table[SuperheatExcess] = OverExpected(superheat, state.UsualSuperheat, duty.ValveDemand);
        table[CompressorSuperheat] = state.Temperature(FactCatalogue.SuctionLineTemperatureAtCompressor) - state.Suction;
        var td = Derivations.Td(state);
        if (!td.IsKnown)
        {
            return;
        }

        if (!state.Evaporator.IsKnown)
        {
            td = (td + -TradeValues.SuctionLineDrop.Kelvins).Widen(TradeValues.SuctionLineDropSpread.Kelvins);
        }

        var spread = state.Facts.Has(FactCatalogue.DesignEvaporatorTd) ? 0 : TradeValues.EvaporatorTdSpread.Value;
        var share = td / (state.DesignTd * duty.Evaporator);
        table[TdShare] = share.Widen(share.Value * spread);
        var on = state.Temperature(FactCatalogue.EvaporatorAirIn);
        var off = state.Temperature(FactCatalogue.EvaporatorAirOut);
        if (td.Value > TradeValues.LeastTdForAir.Kelvins)
        {
            var fall = on - off;
            table[AirShare] = (fall / td.Value).Widen(fall.Value / td.Value * td.Error / td.Value);
        }
    }

    // A valve opens in proportion to the superheat; near its full opening the superheat climbs for want of pressure before it.
    private static Measure OverExpected(Measure superheat, double usual, double demand)
    {
        if (double.IsNaN(demand) || demand <= 1)
        {
            return superheat + -usual;
        }

        var expected = usual * Math.Min(demand, MostOversize);
        var climb = ClimbWhenWideOpen * Math.Clamp((demand - LeastOversize) / (MostOversize - LeastOversize), 0, 1);
        var excess = superheat + -expected;
        return excess.Value <= 0 ? excess : excess with { Value = Math.Max(0, excess.Value - climb) };
    }

    private static void ReadHead(PlantState state, SymptomTable table, double duty)
    {
        var split = Derivations.Split(state);
        if (!split.IsKnown)
        {
            return;
        }

        var designKnown = state.Facts.Has(FactCatalogue.DesignCondenserSplit);
        var expected = state.DesignSplit * duty;
        var spread = designKnown ? TradeValues.PlateSplitSpread.Value : TradeValues.DefaultSplitSpread.Value;
        var held = state.Setting - state.Ambient;
        table[ControlDue] = ((state.Facts.Is(FactCatalogue.HeadPressureControl, "none") ? PlantState.UsualSetting - state.Ambient : held) + -expected).Widen(expected * spread);
        if (held.Value > expected + TradeValues.ControlAtWork.Kelvins)
        {
            table[HeadOverSetting] = state.Condensing - state.Setting;
            table[ColdSplitExcess] = (split + -expected).Widen(expected * spread);

            // Without the setting, anything between the two is as it should be.
            var excess = split.Value > held.Value ? Math.Max(0, split.Value - held.Value - held.Error) : Math.Min(0, split.Value - held.Value + held.Error);
            table[HeadExcess] = split with { Value = excess };
            return;
        }

        table[HeadExcess] = (split + -expected).Widen(expected * spread);
        table[SplitShare] = (split / expected).Widen(spread);
    }

    private static void ReadCondenser(PlantState state, SymptomTable table)
    {
        var coil = state.Facts.Word(FactCatalogue.CondenserCoil);
        var fans = state.Facts.Word(FactCatalogue.CondenserFans);
        if (coil is "dirty" or "snowed" || fans is "some" or "none")
        {
            table[CondenserObstruction] = new(1, 0);
        }
        else if (coil is not null && fans is not null)
        {
            table[CondenserObstruction] = new(0, 0);
        }
    }

    private static void ReadBox(PlantState state, SymptomTable table)
    {
        var box = state.Temperature(FactCatalogue.BoxTemperature);
        table[ThermometerGap] = Widest(box, state.SecondThermometer, state.Temperature(FactCatalogue.EvaporatorAirIn));
        // The air of a room on its way down is colder than its goods, which follow by the hour.
        table[ProductOverBox] = state.IsPullingDown ? Measure.Unknown : state.Temperature(FactCatalogue.ProductTemperature) - state.BoxAir;
        if (state.Degrees(FactCatalogue.Setpoint) is not { } setpoint)
        {
            return;
        }

        var differential = state.Facts.Difference(FactCatalogue.Differential)?.Kelvins;
        // A room on its way down is warm for a reason that is known.
        table[BoxOverSetpoint] = state.IsPullingDown && box.Value > setpoint ? Measure.Unknown : box + -setpoint;
        table[BoxOverCall] = (box + -(setpoint + (differential ?? TradeValues.Differential.Kelvins))).Widen(differential is null ? TradeValues.Differential.Kelvins : 0);
        var warmest = setpoint + (differential ?? TradeValues.Differential.Kelvins) - state.WarmestBox;
        table[SettingExcess] = new(Math.Max(warmest, (differential ?? 0) - TradeValues.WidestDifferential.Kelvins), 0);
    }

    // The independent thermometer first; the air on to the coil is the next best witness.
    private static Measure Widest(Measure box, Measure check, Measure airOn)
    {
        var gap = box - (check.IsKnown ? check : airOn);
        return gap.IsKnown ? gap with { Value = Math.Abs(gap.Value) } : gap;
    }
}
