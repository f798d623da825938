namespace Assistant.Records.Storage.Rows;

/// <summary>A reminder waiting to fall due. What it is about stands in its event.</summary>
public sealed class ReminderRow
{
    public required string VisitId { get; init; }

    public required int EventNumber { get; init; }

    public required DateTimeOffset Due { get; init; }

    public DateTimeOffset? DoneAt { get; set; }
}
