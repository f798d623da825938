using System.Text.Json.Serialization;
using Assistant.Trade.Rules;

namespace Assistant.App.Commands;

/// <summary>What the assess command prints for a set of facts, as the contract of the scripted commands names it.</summary>
internal sealed record AssessResult(
    string Id,
    IReadOnlyList<AssessedFault> Faults,
    AssessedDerived Derived,
    IReadOnlyList<AssessedCaution> Cautions,
    string? Next,
    IReadOnlyList<AssessedRejection> Rejected);

internal sealed record AssessedFault(string Code, string Standing, IReadOnlyList<string> Because, IReadOnlyList<string> Against);

internal sealed record AssessedCaution(string Code, string Text);

internal sealed record AssessedRejection(string Fact, string Text, string Why);

/// <summary>SI, dew except the subcooling; a key is left out where the facts do not allow its value.</summary>
internal sealed record AssessedDerived(
    [property: JsonPropertyName("saturated_suction_temperature_c")] double? SaturatedSuctionTemperature,
    [property: JsonPropertyName("saturated_condensing_temperature_c")] double? SaturatedCondensingTemperature,
    [property: JsonPropertyName("superheat_k")] double? Superheat,
    [property: JsonPropertyName("subcooling_k")] double? Subcooling,
    [property: JsonPropertyName("condenser_split_k")] double? CondenserSplit,
    [property: JsonPropertyName("evaporator_td_k")] double? EvaporatorTd,
    [property: JsonPropertyName("compression_ratio")] double? CompressionRatio,
    [property: JsonPropertyName("flooded_fraction")] double? FloodedFraction)
{
    public static AssessedDerived Of(DerivedValues derived) => new(
        Rounded(derived.SaturatedSuctionTemperature?.Degrees),
        Rounded(derived.SaturatedCondensingTemperature?.Degrees),
        Rounded(derived.Superheat?.Kelvins),
        Rounded(derived.Subcooling?.Kelvins),
        Rounded(derived.CondenserSplit?.Kelvins),
        Rounded(derived.EvaporatorTd?.Kelvins),
        Rounded(derived.CompressionRatio),
        Rounded(derived.FloodedFraction));

    private static double? Rounded(double? value) => value is { } number ? Math.Round(number, 4) : null;
}
