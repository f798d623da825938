namespace Assistant.Trade.Regulations;

/// <summary>How far the repair of a leak over the threshold has come.</summary>
/// <param name="Exceeded">The addition that showed it.</param>
/// <param name="InitialPassed">The initial verification passed for it, or null.</param>
/// <param name="NormalRunning">Normal running reached since the initial verification, or null.</param>
/// <param name="FollowUpPassed">The follow-up verification passed since, or null: the repair is proven.</param>
/// <param name="FollowUpFailed">A follow-up verification failed since, or null.</param>
/// <param name="ProvenBefore">The last proof of an earlier leak, or null.</param>
public sealed record LeakRepairState(
    LeakRateAt Exceeded,
    DateOnly? InitialPassed,
    DateOnly? NormalRunning,
    DateOnly? FollowUpPassed,
    DateOnly? FollowUpFailed,
    DateOnly? ProvenBefore)
{
    /// <summary>
    /// The newest leak over the threshold, open or proven; null where no rate was over, or none since a retrofit. Until it is
    /// proven the dates run from the first addition that showed it.
    /// </summary>
    public static LeakRepairState? Of(IEnumerable<LeakRateAt> rates, IEnumerable<ServiceEvent> events, DateOnly asOf)
    {
        LeakRepairState? state = null;
        DateOnly? tested = null;
        foreach (var step in Steps(rates, events, asOf))
        {
            if (step.Rate is { } rate)
            {
                state = state is null or { FollowUpPassed: not null } ? new(rate, tested, null, null, null, state?.FollowUpPassed) : state;
            }
            else
            {
                state = step.Event is RefrigerantAdded { Reason: AdditionReason.Retrofit } ? null : state?.After(step.Event!);
                tested = TestedBeforeCharging(tested, step.Event!);
            }
        }

        return state;
    }

    // Within a day: the follow-up test of an older leak, then the initial test of this one, which comes before the charge, then the
    // charge that shows the rate.
    private static IEnumerable<(ServiceEvent? Event, LeakRateAt? Rate)> Steps(IEnumerable<LeakRateAt> rates, IEnumerable<ServiceEvent> events, DateOnly asOf) =>
        events.Select(e => (e.On, Rank: RankInDay(e), Event: (ServiceEvent?)e, Rate: (LeakRateAt?)null))
            .Concat(rates.Where(r => r.IsOver).Select(r => (r.On, Rank: 2, Event: (ServiceEvent?)null, Rate: (LeakRateAt?)r)))
            .Where(s => s.On <= asOf)
            .OrderBy(s => s.On)
            .ThenBy(s => s.Rank)
            .Select(s => (s.Event, s.Rate));

    private static int RankInDay(ServiceEvent happened) => happened switch
    {
        VerificationTested { Test: VerificationTest.FollowUp } => 0,
        RefrigerantAdded => 3,
        _ => 1,
    };

    // A repair is tested before it is charged, so the test that belongs to a leak may stand before the addition that shows it.
    private static DateOnly? TestedBeforeCharging(DateOnly? tested, ServiceEvent happened) => happened switch
    {
        VerificationTested { Test: VerificationTest.Initial, Passed: true } test => test.On,
        VerificationTested or RefrigerantAdded => null,
        _ => tested,
    };

    private LeakRepairState After(ServiceEvent happened) => happened switch
    {
        _ when FollowUpPassed is not null => this,
        VerificationTested { Test: VerificationTest.Initial } test => this with { InitialPassed = test.Passed ? test.On : null, NormalRunning = null },
        NormalRunningReached running when InitialPassed is not null => this with { NormalRunning = running.On },
        VerificationTested { Passed: true } proof => this with { FollowUpPassed = proof.On },
        VerificationTested failed => this with { FollowUpFailed = failed.On, InitialPassed = null, NormalRunning = null },
        _ => this,
    };
}
