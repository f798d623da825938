using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using BenchmarkDotNet.Attributes;

namespace Assistant.Benchmarks;

/// <summary>
/// Look-ups on one core, each over the whole range of a blend. The bar: ten million a second, that is 100 ns, and nothing allocated.
/// Run: <c>dotnet run -c Release --project tests/Assistant.Benchmarks -- --filter *Saturation*</c>.
/// </summary>
[MemoryDiagnoser]
public class SaturationBenchmarks
{
    private const int Lookups = 1000;

    private readonly CelsiusTemperature[] temperatures = new CelsiusTemperature[Lookups];
    private readonly AbsolutePressure[] dewPressures = new AbsolutePressure[Lookups];
    private readonly AbsolutePressure[] bubblePressures = new AbsolutePressure[Lookups];
    private SaturationTable table = null!;

    [GlobalSetup]
    public void Spread()
    {
        table = RefrigerantLibrary.Find("R448A")!.Saturation;
        var (low, high) = (table.Temperatures.Lowest.Degrees, table.Temperatures.Highest.Degrees);
        for (var i = 0; i < Lookups; i++)
        {
            // A stride without pattern, so that no look-up rides on the one before it.
            temperatures[i] = new(low + ((high - low) * (i * 617 % Lookups) / Lookups));
            dewPressures[i] = table.DewPressure(temperatures[i]);
            bubblePressures[i] = table.BubblePressure(temperatures[i]);
        }
    }

    [Benchmark(OperationsPerInvoke = Lookups)]
    public double DewPressure()
    {
        var sum = 0.0;
        foreach (var t in temperatures)
        {
            sum += table.DewPressure(t).Pascals;
        }

        return sum;
    }

    [Benchmark(OperationsPerInvoke = Lookups)]
    public double DewTemperature()
    {
        var sum = 0.0;
        foreach (var p in dewPressures)
        {
            sum += table.DewTemperature(p).Degrees;
        }

        return sum;
    }

    [Benchmark(OperationsPerInvoke = Lookups)]
    public double BubbleTemperature()
    {
        var sum = 0.0;
        foreach (var p in bubblePressures)
        {
            sum += table.BubbleTemperature(p).Degrees;
        }

        return sum;
    }

    [Benchmark(OperationsPerInvoke = Lookups)]
    public double LiquidDensity()
    {
        var sum = 0.0;
        foreach (var t in temperatures)
        {
            sum += table.LiquidDensity(t).KilogramsPerCubicMeter;
        }

        return sum;
    }

    [Benchmark(OperationsPerInvoke = Lookups)]
    public double VapourDensity()
    {
        var sum = 0.0;
        foreach (var t in temperatures)
        {
            sum += table.VapourDensity(t).KilogramsPerCubicMeter;
        }

        return sum;
    }
}
