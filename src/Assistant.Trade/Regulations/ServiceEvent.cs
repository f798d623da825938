using UnitsNet;

namespace Assistant.Trade.Regulations;

/// <summary>One thing done to an appliance that a leak rule asks about.</summary>
public abstract record ServiceEvent(DateOnly On);

/// <summary>Refrigerant put in.</summary>
public sealed record RefrigerantAdded(DateOnly On, Mass Amount, AdditionReason Reason = AdditionReason.TopUp) : ServiceEvent(On);

/// <summary>Refrigerant taken out.</summary>
/// <param name="ForTheSeason">Because ambient conditions changed with the season, to be put back for the next.</param>
public sealed record RefrigerantRemoved(DateOnly On, Mass Amount, bool ForTheSeason) : ServiceEvent(On);

/// <summary>A verification test after a repair.</summary>
public sealed record VerificationTested(DateOnly On, VerificationTest Test, bool Passed) : ServiceEvent(On);

/// <summary>The appliance is back at its normal running conditions after it had been opened.</summary>
public sealed record NormalRunningReached(DateOnly On) : ServiceEvent(On);

/// <summary>A leak was repaired.</summary>
public sealed record LeakRepaired(DateOnly On) : ServiceEvent(On);

/// <summary>A leak inspection or leak check of the whole appliance.</summary>
public sealed record LeakInspected(DateOnly On) : ServiceEvent(On);

/// <summary>Why refrigerant was put in.</summary>
public enum AdditionReason
{
    /// <summary>To make up for what is missing: counts as leaked.</summary>
    TopUp,

    /// <summary>To put back what was taken out for the last season.</summary>
    Seasonal,

    /// <summary>The first charge of a new appliance.</summary>
    NewInstallation,

    /// <summary>The charge right after a retrofit.</summary>
    Retrofit,
}

/// <summary>Which verification test.</summary>
public enum VerificationTest
{
    /// <summary>When the repair is done, before refrigerant is added.</summary>
    Initial,

    /// <summary>At normal running conditions.</summary>
    FollowUp,
}
