using System.Globalization;
using Assistant.Records.Assets;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Regulations;
using UnitsNet;

namespace Assistant.Records.Reports.Model;

/// <summary>What the record of a piece of equipment says that the leak rules ask for.</summary>
public static class ApplianceDetails
{
    /// <summary>commercial-refrigeration, industrial-process, comfort-cooling or other.</summary>
    public const string Use = "appliance_use";

    /// <summary>The day it was installed, as 2026-03-01.</summary>
    public const string InstalledOn = "installed_on";

    /// <summary>yes where a leak detection system that alerts the operator is installed.</summary>
    public const string LeakDetection = "leak_detection";

    /// <summary>yes where it is hermetically sealed and labelled so.</summary>
    public const string Hermetic = "hermetically_sealed";

    /// <summary>yes for residential or light commercial air conditioning.</summary>
    public const string LightCommercial = "light_commercial_comfort_cooling";

    /// <summary>The appliance as the rules see it. Where its use is not on record it is taken for commercial refrigeration: a cold room is.</summary>
    public static Appliance Of(Asset asset, Refrigerant refrigerant, Mass charge)
    {
        ArgumentNullException.ThrowIfNull(asset);
        ArgumentNullException.ThrowIfNull(refrigerant);
        return new Appliance(asset.Id, refrigerant.Components, charge, UseOf(asset) ?? ApplianceUse.CommercialRefrigeration)
        {
            IsResidentialOrLightCommercial = Says(asset, LightCommercial),
            IsHermeticallySealed = Says(asset, Hermetic),
            HasLeakDetection = Says(asset, LeakDetection),
            InstalledOn = DateOnly.TryParseExact(asset.Details.GetValueOrDefault(InstalledOn), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null,
        };
    }

    /// <summary>What it is for, or null where that is not on record.</summary>
    public static ApplianceUse? UseOf(Asset asset)
    {
        ArgumentNullException.ThrowIfNull(asset);
        return asset.Details.GetValueOrDefault(Use) switch
        {
            "commercial-refrigeration" => ApplianceUse.CommercialRefrigeration,
            "industrial-process" => ApplianceUse.IndustrialProcess,
            "comfort-cooling" => ApplianceUse.ComfortCooling,
            "other" => ApplianceUse.Other,
            _ => null,
        };
    }

    /// <summary>Why an addition was made, as the rules count it: what follows a repair counts like any other top-up.</summary>
    public static AdditionReason ReasonOf(string? told) => told switch
    {
        "seasonal" => AdditionReason.Seasonal,
        "new-installation" => AdditionReason.NewInstallation,
        "retrofit" => AdditionReason.Retrofit,
        _ => AdditionReason.TopUp,
    };

    private static bool Says(Asset asset, string detail) => asset.Details.GetValueOrDefault(detail) is "yes";
}
