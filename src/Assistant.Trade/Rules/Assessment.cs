using System.Collections.Immutable;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Trade.Rules;

/// <summary>What the rule core makes of a set of facts.</summary>
/// <param name="Findings">Best first, ruled-out last, ties in the contract's order. Never empty.</param>
/// <param name="Next">The fact that would separate the leading faults best for the least walking, or null.</param>
public sealed record Assessment(
    ImmutableArray<Finding> Findings,
    DerivedValues Derived,
    ImmutableArray<CautionCode> Cautions,
    Fact? Next,
    ImmutableArray<Rejection> Rejected);

/// <summary>One fault with how far it is shown, and by what.</summary>
/// <param name="RuleSource">Where the rule comes from: a standard, handbook or paper by name, or "common practice".</param>
public sealed record Finding(
    FaultCode Code,
    Standing Standing,
    ImmutableArray<Reason> Because,
    ImmutableArray<Reason> Against,
    string RuleSource);

/// <summary>A fact that is questioned and kept out of the verdict, and why.</summary>
public sealed record Rejection(FactValue Value, Reason Why);

/// <summary>What follows from the readings by calculation; null where the facts do not allow it. Dew point except the subcooling, which is from bubble.</summary>
/// <param name="SuperheatIsApproximate">True where the gauge is at the unit and the thermometer at the bulb: the real superheat is lower by the line's drop.</param>
/// <param name="CompressionRatio">Absolute discharge over absolute suction pressure.</param>
/// <param name="FloodedFraction">Share of the condenser held full of liquid by the head pressure control, 0 to 1.</param>
public sealed record DerivedValues(
    CelsiusTemperature? SaturatedSuctionTemperature,
    CelsiusTemperature? SaturatedCondensingTemperature,
    TemperatureDifference? Superheat,
    bool SuperheatIsApproximate,
    TemperatureDifference? Subcooling,
    TemperatureDifference? CondenserSplit,
    TemperatureDifference? EvaporatorTd,
    double? CompressionRatio,
    double? FloodedFraction);
