namespace Assistant.Trade.Regulations;

/// <summary>What an appliance is for, as the leak rules sort them.</summary>
public enum ApplianceUse
{
    /// <summary>Retail food and cold storage.</summary>
    CommercialRefrigeration,

    /// <summary>Complex custom-built appliances tied into a process, and ice making on that scale.</summary>
    IndustrialProcess,

    /// <summary>Air conditioning of occupied rooms.</summary>
    ComfortCooling,

    /// <summary>Everything else; judged like comfort cooling.</summary>
    Other,
}
