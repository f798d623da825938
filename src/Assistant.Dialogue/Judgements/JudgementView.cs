using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Judgements;

/// <summary>What a judgement looks at.</summary>
/// <param name="Since">Readings of this visit count from the first event after this one on.</param>
/// <param name="Now">The time of the message being answered.</param>
public sealed record JudgementView(VisitState Visit, int Since, DateTimeOffset Now)
{
    public FactSet Facts => Visit.Facts;

    /// <summary>The readings of a fact on this passage, in the order they were taken.</summary>
    public ImmutableArray<CourseReading> Course(Fact fact)
    {
        var course = ImmutableArray.CreateBuilder<CourseReading>();
        foreach (var entry in Visit.History.GetValueOrDefault(fact, []))
        {
            if (entry.Number > Since && entry.Value is Reading reading)
            {
                course.Add(new(reading, entry.At));
            }
        }

        return course.ToImmutable();
    }

    /// <summary>
    /// How long after the first reading of the course each was taken: by the time said beside it ("450 after ten minutes"), else by
    /// the clock. Of two at the same time the later said counts; one that would come before the one ahead of it is left out.
    /// </summary>
    public ImmutableArray<(TimeSpan Elapsed, Reading Reading)> Elapsed(Fact fact)
    {
        var said = Course(FactCatalogue.ElapsedTime).ToLookup(e => e.At, e => TimeSpan.FromSeconds(e.Reading.Canonical));
        var readings = Course(fact);
        var course = ImmutableArray.CreateBuilder<(TimeSpan, Reading)>();
        foreach (var (reading, at) in readings)
        {
            var elapsed = said.Contains(at) ? said[at].Last() : at - readings[0].At;
            if (course.Count > 0 && elapsed == course[^1].Item1)
            {
                course[^1] = (elapsed, reading);
            }
            else if (course.Count == 0 || elapsed > course[^1].Item1)
            {
                course.Add((elapsed, reading));
            }
        }

        return course.ToImmutable();
    }
}

/// <summary>A reading with the time it was taken.</summary>
public readonly record struct CourseReading(Reading Reading, DateTimeOffset At);
