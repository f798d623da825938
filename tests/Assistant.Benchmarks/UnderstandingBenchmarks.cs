using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using BenchmarkDotNet.Attributes;

namespace Assistant.Benchmarks;

/// <summary>How long one message takes to be understood, of each kind. The bar is a median under 50 microseconds over the corpus.</summary>
[MemoryDiagnoser]
public class UnderstandingBenchmarks
{
    private (string Text, UnderstandingContext Context)[] corpus = [];
    private Understander understander = null!;
    private int next;

    [GlobalSetup]
    public void Load()
    {
        var root = AppContext.BaseDirectory;
        while (!Directory.Exists(Path.Combine(root, "dialogs", "lexicon")))
        {
            root = Path.GetDirectoryName(root.TrimEnd(Path.DirectorySeparatorChar)) ?? throw new DirectoryNotFoundException("the repository with its dialogs");
        }

        understander = new(Lexicon.Load(Directory.GetFiles(Path.Combine(root, "dialogs", "lexicon"), "*.yaml").Select(p => new DialogFile(p, File.ReadAllText(p)))));
        corpus = [.. Directory.GetFiles(Path.Combine(root, "tests", "data", "utterances"), "*.tsv").SelectMany(File.ReadLines).Select(l => l.Split('\t')).Where(f => f.Length == 5)
            .Select(f => (f[3], new UnderstandingContext(FactCatalogue.Find(f[2]), f[0].EndsWith("-metric", StringComparison.Ordinal) ? UnitSystem.Metric : UnitSystem.Us)))];
    }

    /// <summary>One line of the corpus after another.</summary>
    [Benchmark(Baseline = true)]
    public Understood OneLineOfTheCorpus()
    {
        var (text, context) = corpus[next++ % corpus.Length];
        return understander.Understand(text, context);
    }

    [Benchmark]
    public Understood ASpokenNumber() => understander.Understand("one seventeen and a half", new(FactCatalogue.DischargePressure, UnitSystem.Us));

    [Benchmark]
    public Understood SixReadingsInOneText() => understander.Understand("SUC 22 HD 201 DL 185 LL 88 AMB 70 SG CLR", new(FactCatalogue.SuctionPressure, UnitSystem.Us));

    [Benchmark]
    public Understood AQuestion() => understander.Understand("what is saturation for 404a at 117 pounds", new(FactCatalogue.SuctionPressure, UnitSystem.Us));

    /// <summary>A form that only the number recogniser settles.</summary>
    [Benchmark]
    public Understood AnEighth() => understander.Understand("two and three eighths pounds", new(FactCatalogue.ChargeAdded, UnitSystem.Us));
}
