using static System.FormattableString;

namespace Transport;

/// <summary>The dwell time at which D/P urea and D/D0 glucose are equal, by straight lines between samples. Used to choose short dwells in children.</summary>
public static class CrossingTime
{
    /// <summary>The crossing of two courses; null where they do not cross between two of their common times.</summary>
    /// <param name="course">D/P urea and D/D0 glucose at times in order.</param>
    public static TimeSpan? Of(IReadOnlyList<(TimeSpan Time, double UreaRatio, double GlucoseRatio)> course)
    {
        ArgumentNullException.ThrowIfNull(course);
        foreach (var (before, after) in course.Zip(course.Skip(1)))
        {
            var (gap, next) = (before.GlucoseRatio - before.UreaRatio, after.GlucoseRatio - after.UreaRatio);
            if (gap >= 0 && next <= 0 && gap > next)
            {
                return before.Time + (after.Time - before.Time) * (gap / (gap - next));
            }
        }

        return null;
    }

    internal static IndexValue? Of(EquilibrationIndices indices, IndexInputs inputs)
    {
        const string name = "urea-glucose crossing time";
        var course = indices.Ratios
            .Where(sample => sample.DialysateToPlasmaUrea is not null && sample.DialysateToInitialGlucose is not null)
            .Select(sample => (sample.Time, sample.DialysateToPlasmaUrea!, sample.DialysateToInitialGlucose!)).ToList();
        if (Of([.. course.Select(point => (point.Time, point.Item2.Value, point.Item3.Value))]) is not { } crossing)
        {
            return inputs.Missing(name, "needs urea and glucose in samples on both sides of the crossing, at 15, 30 and 60 min");
        }

        // The two samples around the crossing carry its error.
        var at = course.FindLastIndex(point => point.Time <= crossing);
        at = Math.Min(at, course.Count - 2);
        var (a, b) = (course[at], course[at + 1]);
        (double, double)[] around =
        [
            (a.Item2.Value, a.Item2.StandardDeviation ?? 0), (a.Item3.Value, a.Item3.StandardDeviation ?? 0),
            (b.Item2.Value, b.Item2.StandardDeviation ?? 0), (b.Item3.Value, b.Item3.StandardDeviation ?? 0),
        ];
        var deviation = ErrorPropagation.Of(
            x => a.Time.TotalMinutes + (b.Time - a.Time).TotalMinutes * (x[1] - x[0]) / (x[1] - x[0] - (x[3] - x[2])), around).Deviation;
        return new(name, crossing.TotalMinutes, "min",
            Invariant($"D/P urea = D/D0 glucose between {a.Time.TotalMinutes:0} and {b.Time.TotalMinutes:0} min, straight lines"),
            "paediatric practice (memory)", deviation);
    }
}
