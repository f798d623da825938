namespace Assistant.Records.Storage.Rows;

/// <summary>Whose visit it is, and the code by which a person with access joins it while it is open.</summary>
public sealed class VisitAccessRow
{
    public required string VisitId { get; init; }

    /// <summary>Null where it is no firm's.</summary>
    public string? FirmId { get; set; }

    /// <summary>Digits, said one at a time; unique among those kept.</summary>
    public required string Code { get; set; }
}
