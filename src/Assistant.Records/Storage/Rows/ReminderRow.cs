namespace Assistant.Records.Storage.Rows;

/// <summary>A reminder waiting to fall due. What it is about stands in its event.</summary>
public sealed class ReminderRow
{
    public required string VisitId { get; init; }

    public required int EventNumber { get; init; }

    public required DateTimeOffset Due { get; init; }

    public DateTimeOffset? DoneAt { get; set; }

    /// <summary>The asking it was given in answer to, or null: asked again under the same name, it is given again.</summary>
    public string? GivenTo { get; set; }
}
