namespace Assistant.Trade.Regulations;

/// <summary>What a component is to the law.</summary>
public enum SubstanceKind
{
    /// <summary>Saturated: a regulated substance of 40 CFR 84, annex I of Regulation (EU) 2024/573.</summary>
    Hfc,

    /// <summary>Unsaturated: annex II section 1 of Regulation (EU) 2024/573.</summary>
    Hfo,

    /// <summary>Class I or class II of 40 CFR 82.</summary>
    OzoneDepleting,

    /// <summary>Hydrocarbons, ammonia, carbon dioxide.</summary>
    Natural,
}
