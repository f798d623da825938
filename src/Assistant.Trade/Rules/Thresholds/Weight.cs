namespace Assistant.Trade.Rules.Thresholds;

/// <summary>What a misfit weighs, in squared errors: 4 speaks clearly against a fault, 9 strongly, 40 rules it out alone.</summary>
internal readonly record struct Weight(double SquaredErrors);
