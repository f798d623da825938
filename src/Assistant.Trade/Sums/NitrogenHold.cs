using Assistant.Trade.Quantities;
using UnitsNet;

namespace Assistant.Trade.Sums;

/// <summary>A nitrogen pressure test that is left to stand.</summary>
public static class NitrogenHold
{
    /// <summary>
    /// p2 = p1 * T2 / T1, absolute pressures and temperatures: what a tight system shows. Source: ideal gas at constant volume.
    /// 150 psig set at 70 degF reads 140.7 psig at 40 degF.
    /// </summary>
    public static AbsolutePressure Expected(AbsolutePressure set, CelsiusTemperature setAt, CelsiusTemperature now) =>
        new(set.Pascals * now.Kelvins / setAt.Kelvins);

    /// <summary>
    /// The smallest fall that the instruments can tell from nothing: one step of the gauge, and the pressure that one step of the
    /// thermometer stands for. Source: ideal gas.
    /// </summary>
    /// <param name="gaugeStep">Pa.</param>
    public static Pressure SmallestVisibleFall(AbsolutePressure set, CelsiusTemperature setAt, Pressure gaugeStep, TemperatureDifference thermometerStep) =>
        gaugeStep + Pressure.FromPascals(set.Pascals * thermometerStep.Kelvins / setAt.Kelvins);

    /// <summary>The smallest leak a hold of that length shows: fall * V / time, in Pa m3/s of nitrogen at the test's pressure. Source: ideal gas.</summary>
    public static double SmallestVisibleLeak(Pressure smallestFall, Volume system, Duration hold)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(hold.Seconds, nameof(hold));
        return smallestFall.Pascals * system.CubicMeters / hold.Seconds;
    }

    /// <summary>What the hold shows: a fall (or rise) within the visible one says nothing.</summary>
    public static NitrogenHoldVerdict Judge(AbsolutePressure expected, AbsolutePressure read, Pressure smallestVisible)
    {
        var fall = expected.Pascals - read.Pascals;
        return fall > smallestVisible.Pascals ? NitrogenHoldVerdict.Leaking
            : fall < -smallestVisible.Pascals ? NitrogenHoldVerdict.ReadsHigh
            : NitrogenHoldVerdict.Holds;
    }
}

public enum NitrogenHoldVerdict
{
    Holds,
    Leaking,

    /// <summary>More pressure than the temperatures explain: the gas was warmer than its thermometer, or a reading is wrong.</summary>
    ReadsHigh,
}
