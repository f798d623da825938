using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules.Evidence;
using static Assistant.Trade.Rules.Evidence.Symptom;

namespace Assistant.Trade.Rules.Derivation;

/// <summary>Sets the readings against what a healthy plant of this design would read in this weather.</summary>
internal static class SymptomReader
{
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

        if (state.Rests)
        {
            ReadResting(state, table);
        }
        else
        {
            ReadRunning(state, table);
        }

        ReadBox(state, table);
        table[HighSideOverAmbient] = state.Condensing - state.Ambient;
        table[StandingExcess] = state.BubbleOf(state.Facts.Pressure(FactCatalogue.HighSideStandingPressure)) - state.Ambient;
        return table;
    }

    private static void ReadResting(PlantState state, SymptomTable table)
    {
        table[RestingGap] = state.Condensing - state.Suction;
        table[RestingTd] = state.BoxAir - state.Suction;
    }

    private static void ReadRunning(PlantState state, SymptomTable table)
    {
        var flow = Flow.Share(state);
        ReadLowSide(state, table, flow);
        table[Subcooling] = Derivations.Subcooling(state);
        ReadHead(state, table, flow);
        var atUnit = state.Temperature(FactCatalogue.LiquidLineTemperature);
        table[DrierDrop] = state.Temperature(FactCatalogue.DrierInletTemperature) - state.Temperature(FactCatalogue.DrierOutletTemperature);
        table[LiquidLineDrop] = atUnit - state.Temperature(FactCatalogue.LiquidLineTemperatureAtCoil);
        if (state.Facts.Quantity(FactCatalogue.CompressorCurrent, Dimension.Current) is { } amperes
            && state.Facts.Quantity(FactCatalogue.RatedCurrent, Dimension.Current) is > 0 and var rated)
        {
            table[CurrentShare] = new(amperes / rated, 0.02);
        }
    }

    private static void ReadLowSide(PlantState state, SymptomTable table, double flow)
    {
        var superheat = Derivations.Superheat(state, out var approximate);
        if (approximate)
        {
            superheat = (superheat + -TradeValues.SuctionLineDrop).Widen(TradeValues.SuctionLineDropSpread);
        }

        table[SuperheatExcess] = superheat + -state.UsualSuperheat;
        table[CompressorSuperheat] = state.Temperature(FactCatalogue.SuctionLineTemperatureAtCompressor) - state.Suction;
        var td = Derivations.Td(state);
        if (!td.IsKnown)
        {
            return;
        }

        if (!state.Evaporator.IsKnown)
        {
            td = (td + -TradeValues.SuctionLineDrop).Widen(TradeValues.SuctionLineDropSpread);
        }

        var spread = state.Facts.Has(FactCatalogue.DesignEvaporatorTd) ? 0 : TradeValues.EvaporatorTdSpread;
        var share = td / (state.DesignTd * flow);
        table[TdShare] = share.Widen(share.Value * spread);
        var on = state.Temperature(FactCatalogue.EvaporatorAirIn);
        var off = state.Temperature(FactCatalogue.EvaporatorAirOut);
        if (td.Value > 1)
        {
            table[AirShare] = (on - off) / td.Value;
        }
    }

    private static void ReadHead(PlantState state, SymptomTable table, double flow)
    {
        var split = Derivations.Split(state);
        if (!split.IsKnown)
        {
            return;
        }

        var designKnown = state.Facts.Has(FactCatalogue.DesignCondenserSplit);
        var expected = state.DesignSplit * Math.Clamp(flow, 0.3, 1.4);
        var spread = expected * (designKnown ? 0.1 : 0.25);
        var held = state.Setting.Value - state.Ambient.Value;
        if (held > expected + 2)
        {
            table[HeadOverSetting] = state.Condensing + -state.Setting.Value;
            table[ColdSplitExcess] = (split + -state.DesignSplit).Widen(spread);
            table[HeadExcess] = split + -held;
            return;
        }

        table[HeadExcess] = (split + -expected).Widen(spread);
    }

    private static void ReadBox(PlantState state, SymptomTable table)
    {
        var box = state.Temperature(FactCatalogue.BoxTemperature);
        table[ThermometerGap] = Widest(box, state.Temperature(FactCatalogue.BoxTemperatureCheck), state.Temperature(FactCatalogue.EvaporatorAirIn));
        if (state.Degrees(FactCatalogue.Setpoint) is not { } setpoint)
        {
            return;
        }

        var differential = state.Facts.Difference(FactCatalogue.Differential)?.Kelvins;
        table[BoxOverSetpoint] = box + -setpoint;
        table[BoxOverCall] = (box + -setpoint) + -(differential ?? TradeValues.Differential);
        table[SettingExcess] = new(setpoint + (differential ?? TradeValues.Differential) - state.WarmestBox, 0);
    }

    // The independent thermometer first; the air on to the coil is the next best witness.
    private static Measure Widest(Measure box, Measure check, Measure airOn)
    {
        var gap = box - (check.IsKnown ? check : airOn);
        return gap.IsKnown ? gap with { Value = Math.Abs(gap.Value) } : gap;
    }
}
