using System.Collections.Frozen;
using System.Text.RegularExpressions;
using Assistant.Trade.Cautions;
using Assistant.Trade.Ledgers;
using Assistant.Trade.Regulations;
using Assistant.Trade.Rules;

namespace Assistant.Trade;

/// <summary>The kebab-case spelling of the codes in the contract, both ways.</summary>
public static partial class Codes
{
    private static readonly FrozenDictionary<FaultCode, string> Faults = Enum.GetValues<FaultCode>().ToFrozenDictionary(c => c, c => Kebab(c.ToString()));
    private static readonly FrozenDictionary<CautionCode, string> Cautions = Enum.GetValues<CautionCode>().ToFrozenDictionary(c => c, c => Kebab(c.ToString()));
    private static readonly FrozenDictionary<Standing, string> Standings = Enum.GetValues<Standing>().ToFrozenDictionary(c => c, c => Kebab(c.ToString()));
    private static readonly FrozenDictionary<RegulationCode, string> Regulations = Enum.GetValues<RegulationCode>().ToFrozenDictionary(c => c, c => Kebab(c.ToString()));
    private static readonly FrozenDictionary<RefusalReason, string> Refusals = Enum.GetValues<RefusalReason>().ToFrozenDictionary(c => c, c => Kebab(c.ToString()));
    private static readonly FrozenDictionary<string, CautionCode> CautionsByCode = Cautions.ToFrozenDictionary(p => p.Value, p => p.Key);
    private static readonly FrozenDictionary<string, FaultCode> FaultsByCode = Faults.ToFrozenDictionary(p => p.Value, p => p.Key);

    public static string Of(FaultCode code) => Faults[code];

    public static string Of(CautionCode code) => Cautions[code];

    public static string Of(Standing standing) => Standings[standing];

    public static string Of(RegulationCode code) => Regulations[code];

    public static string Of(RefusalReason reason) => Refusals[reason];

    /// <summary>The caution of that kebab-case code, or null.</summary>
    public static CautionCode? FindCaution(string code) => CautionsByCode.TryGetValue(code, out var found) ? found : null;

    /// <summary>The fault of that kebab-case code, or null.</summary>
    public static FaultCode? FindFault(string code) => FaultsByCode.TryGetValue(code, out var found) ? found : null;

    /// <summary>A PascalCase name in kebab-case.</summary>
    internal static string KebabOf(string pascal) => Kebab(pascal);

    private static string Kebab(string pascal) => WordStart().Replace(pascal, "-$0").ToLowerInvariant();

    [GeneratedRegex("(?<!^)[A-Z]")]
    private static partial Regex WordStart();
}
