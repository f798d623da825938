namespace Assistant.Trade.Regulations;

/// <summary>How far the repair of a leak over the threshold has come.</summary>
/// <param name="Exceeded">The addition that showed it.</param>
/// <param name="InitialPassed">The initial verification passed since, or null.</param>
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
    /// The newest leak over the threshold, open or proven; null where no rate was over. Until it is proven the dates run from the
    /// first addition that showed it.
    /// </summary>
    public static LeakRepairState? Of(IEnumerable<LeakRateAt> rates, IEnumerable<ServiceEvent> events, DateOnly asOf)
    {
        LeakRepairState? state = null;
        // On one day a test comes before the addition: the charge goes in only after it.
        var steps = events.Where(e => e.On <= asOf).Select(e => (e.On, Rank: 0, Event: (ServiceEvent?)e, Rate: (LeakRateAt?)null))
            .Concat(rates.Where(r => r.IsOver && r.On <= asOf).Select(r => (r.On, Rank: 1, Event: (ServiceEvent?)null, Rate: (LeakRateAt?)r)));
        foreach (var step in steps.OrderBy(s => s.On).ThenBy(s => s.Rank))
        {
            if (step.Rate is { } rate)
            {
                state = state is null or { FollowUpPassed: not null } ? new(rate, null, null, null, null, state?.FollowUpPassed) : state;
            }
            else
            {
                state = state?.After(step.Event!);
            }
        }

        return state;
    }

    private LeakRepairState After(ServiceEvent happened) => happened switch
    {
        _ when FollowUpPassed is not null => this,
        VerificationTested { Test: VerificationTest.Initial, Passed: true } test => this with { InitialPassed = test.On, NormalRunning = null },
        NormalRunningReached running when InitialPassed is not null => this with { NormalRunning = running.On },
        VerificationTested { Test: VerificationTest.FollowUp } test => test.Passed ? this with { FollowUpPassed = test.On } : this with { FollowUpFailed = test.On, InitialPassed = null, NormalRunning = null },
        _ => this,
    };
}
