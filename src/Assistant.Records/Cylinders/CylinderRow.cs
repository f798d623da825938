namespace Assistant.Records.Cylinders;

/// <summary>A stored event that tells of a cylinder's use, or that may take one back.</summary>
/// <param name="AssetId">The equipment its visit is at, or null.</param>
internal sealed record CylinderRow(string VisitId, int Number, string Kind, string Body, string? Personal, string? AssetId);
