namespace Assistant.Trade.Rules.Evidence;

/// <summary>What every symptom reads for one set of facts.</summary>
internal sealed class SymptomTable
{
    public static int Count { get; } = Enum.GetValues<Symptom>().Length;

    private readonly Measure[] measures = new Measure[Count];

    public SymptomTable() => Array.Fill(measures, Measure.Unknown);

    public Measure this[Symptom symptom]
    {
        get => measures[(int)symptom];
        set => measures[(int)symptom] = value;
    }

    public bool Knows(Symptom symptom) => measures[(int)symptom].IsKnown;
}
