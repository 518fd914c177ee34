namespace Transport.Analysis;

/// <summary>The bags of a 24-h collection as exchanges that a fit takes, and the reason for each that cannot be one.</summary>
/// <remarks>
/// A bag is an exchange with samples at its end alone: ratios to the collection's blood, and the change of volume. It needs its fill, its glucose and how long it dwelt, which a
/// collection does not write down. A pool of several drains is no dwell: one volume and one mixture of cycles that cannot be parted again.
/// </remarks>
public static class CollectedExchanges
{
    /// <summary>The bags that can be fitted.</summary>
    /// <param name="day">The collection.</param>
    /// <param name="dwells">How long each bag dwelt, in the order of <see cref="CollectedDay.Drains"/>; null where it is not known, or where a drain is a pool of several.</param>
    /// <param name="findings">Why a bag is left out: its name and what is missing.</param>
    /// <param name="errors">Errors of the measurements.</param>
    /// <exception cref="ArgumentException">Not as many dwells as drains.</exception>
    public static IReadOnlyList<ObservedExchange> From(
        CollectedDay day, IReadOnlyList<TimeSpan?> dwells, out IReadOnlyList<Finding> findings, AssayErrors? errors = null)
    {
        ArgumentNullException.ThrowIfNull(day);
        ArgumentNullException.ThrowIfNull(dwells);
        if (dwells.Count != day.Drains.Count)
        {
            throw new ArgumentException($"Expected a dwell, or null, for each of {day.Drains.Count} drains; found {dwells.Count}.", nameof(dwells));
        }

        var told = day.Drains.Zip(dwells, (drain, dwell) => (Drain: drain, Dwell: dwell, Reason: WhyNot(drain, dwell))).ToList();
        findings =
        [
            .. told.Where(one => one.Reason is not null).Select(one => new Finding(
                Severity.Warning, "collection-not-fitted", $"The drain '{one.Drain.Name}' is not fitted: {one.Reason}.")),
        ];
        return [.. told.Where(one => one.Reason is null).Select(one => ObservedExchange.From(AsTest(day, one.Drain, one.Dwell!.Value), errors))];
    }

    private static string? WhyNot(CollectedDrain drain, TimeSpan? dwell) =>
        dwell is null ? "how long it dwelt is not known, or it is a pool of several"
        : dwell <= TimeSpan.Zero || dwell > TimeSpan.FromHours(48) ? "its dwell is not between 0 and 48 h"
        : drain.Fill is not { Milliliters: > 0 } ? "what was instilled is not written down"
        : drain.Solution is null ? "its fluid is not written down"
        : drain.Solution.Agent != OsmoticAgent.Glucose ? $"{drain.Solution.Name} is no glucose solution"
        : null;

    // What a bag tells is what a test with one sample at its end tells.
    private static EquilibrationTest AsTest(CollectedDay day, CollectedDrain drain, TimeSpan dwell) => new()
    {
        Patient = day.Patient,
        Date = day.Date,
        Solution = drain.Solution!,
        InstilledVolume = drain.Fill!.Value,
        FillBasis = FillBasis.Measured,
        DrainedVolume = drain.Drained,
        Dwell = dwell,
        CreatinineAssay = day.CreatinineAssay,
        Plasma = [.. day.Plasma.Select(sample => sample with { Time = dwell })],
        Dialysate = [drain.Sample with { Time = dwell }],
    };
}
