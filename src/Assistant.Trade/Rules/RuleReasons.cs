namespace Assistant.Trade.Rules;

/// <summary>The keys of every sentence the rule core may ask a phrase book for.</summary>
public static class RuleReasons
{
    public static IEnumerable<string> Keys =>
    [
        .. Reasons.Keys,
        "reason.outside-transcritical", "reason.outside-fixed-orifice", OutsideTheRules.ElectronicValve, OutsideTheRules.NoTable, "reason.readings-questioned",
        "reason.reading-impossible", "reason.reading-contradicted", "reason.reading-in-another-unit", "reason.reading-without-its-minus",
    ];
}
