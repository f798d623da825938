namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>What a phrase says of a cylinder.</summary>
internal enum CylinderWord
{
    Cylinder,
    RecoveryCylinder,
    Tare,
    Before,
    After,
    Weighs,
    Now,
    WaterCapacity,
    Charged,
    Recovered,
    Transferred,
    Lost,
    LostWhereSaid,
    Hoses,
    Unknown,
}

/// <summary>Reads cylinders.yaml: the words for cylinders, their weights and where the refrigerant goes.</summary>
internal sealed class CylindersPart(LexiconFile file)
{
    private static readonly (string Field, CylinderWord Word)[] Fields =
    [
        ("cylinder", CylinderWord.Cylinder), ("recovery-cylinder", CylinderWord.RecoveryCylinder), ("tare", CylinderWord.Tare), ("before", CylinderWord.Before),
        ("after", CylinderWord.After), ("weighs", CylinderWord.Weighs), ("now", CylinderWord.Now), ("water-capacity", CylinderWord.WaterCapacity),
        ("charged", CylinderWord.Charged), ("recovered", CylinderWord.Recovered), ("transferred", CylinderWord.Transferred), ("lost", CylinderWord.Lost), ("lost-where-said", CylinderWord.LostWhereSaid), ("hoses", CylinderWord.Hoses),
        ("unknown", CylinderWord.Unknown),
    ];

    public PhraseTable<CylinderWord> Words { get; } = new();

    /// <summary>Why refrigerant moved, in the log's words.</summary>
    public PhraseTable<string> Reasons { get; } = new();

    public void Read()
    {
        file.AllowOnly([.. Fields.Select(f => f.Field), "reasons"]);
        foreach (var (reason, _, entry) in file.Entries("reasons"))
        {
            foreach (var (phrase, _, _) in file.Phrases(entry, reason))
            {
                Reasons.Add(phrase, reason);
            }
        }

        foreach (var (field, word) in Fields)
        {
            foreach (var (phrase, _, _) in file.Phrases(field))
            {
                Words.Add(phrase, word);
            }
        }
    }
}
