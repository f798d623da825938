namespace Assistant.Trade.Rules.Thresholds;

/// <summary>One quantity over another of its kind: 1 is as much as at design.</summary>
internal readonly record struct Share(double Value);
