using MathNet.Numerics.Statistics;
using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>What a fit eats of a record book: the nights of each regimen as one mean, with the error of a mean and the doubt that stays.</summary>
/// <remarks>
/// Nights of one regimen have one expectation, so their mean says all that they tell of the membrane, and one simulation serves them all. Two nuisances are not the
/// membrane's. How nights differ (the person's own standard deviation, as the review has it) makes the error of the mean; its slow wander does not average out
/// as quickly. How far this person's nights are from the model altogether (<see cref="NightNoise.OffsetMilliliters"/>) is common to all of them and integrated
/// out. Strengths that were not tested hold the model's discrepancy too.
/// </remarks>
public sealed record ObservedNights
{
    private const double Furthest = 3.5;
    private const int Few = 14;

    private ObservedNights()
    {
    }

    /// <summary>Whose nights.</summary>
    public required Patient Patient { get; init; }

    /// <summary>The means, a regimen and a quantity each.</summary>
    public required IReadOnlyList<NightMean> Means { get; init; }

    /// <summary>Nights that any of the means counts.</summary>
    public required int Nights { get; init; }

    /// <summary>Standard deviation of one night's ultrafiltration.</summary>
    public required Volume NightDeviation { get; init; }

    /// <summary>How far a person's nights, or days, may be from the model altogether for reasons that are not the membrane's, standard deviation.</summary>
    public required Volume OffsetDeviation { get; init; }

    /// <summary>The strength of the test: nights at others hold the model's discrepancy. Null: there was no test.</summary>
    public required DialysisSolution? Tested { get; init; }

    /// <summary>Which nights are left out, and why.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>The nights of a reviewed book.</summary>
    /// <remarks>
    /// Left out are the weeks of a peritonitis, nights without treatment or without a regimen, and initial drains after a dry day, which tell of the residual volume
    /// alone. Lost dwell and blood glucose, where written, are allowed for. A night far from the others counts as one at 3.5 standard deviations.
    /// </remarks>
    /// <param name="review">The review: it knows what the book counts, which nights are left out and how nights differ.</param>
    /// <param name="from">The first night to take; null: the book's first.</param>
    /// <param name="until">The last night to take; null: the last before the first change that the review found may have begun.</param>
    /// <exception cref="ArgumentException">No night can be used.</exception>
    public static ObservedNights From(RecordReview review, DateOnly? from = null, DateOnly? until = null)
    {
        ArgumentNullException.ThrowIfNull(review);
        var changed = review.Changes.Count > 0 ? review.Changes.Min(change => change.BeganEarliest) : DateOnly.MaxValue;
        bool IsIn(ReviewedNight night) => night.Record.Date >= (from ?? DateOnly.MinValue)
            && (until is { } last ? night.Record.Date <= last : night.Record.Date < changed)
            && night is { LeftOut: "", Basis: not null };
        var nights = review.Nights.Where(IsIn).ToList();
        var noise = review.Options.Noise;
        var deviation = review.NightDeviation?.Milliliters ?? 0;
        var means = new List<NightMean>();
        var used = new HashSet<DateOnly>();
        foreach (var night in nights.Where(night => night is { Ultrafiltration: not null, HoldsDay: false }).GroupBy(night => night.Basis!.Response))
        {
            Add(night.Key.Regimen, ObservedQuantity.MeanNightUltrafiltrationMilliliters, night, one => one.Ultrafiltration!.Value.Milliliters - one.Basis!.NightCorrection, deviation, night.Key.ModelForm, 1);
        }

        foreach (var day in nights.Where(night => night.Record.InitialDrain is not null && night.Basis!.Before?.DayFill > 0).GroupBy(night => night.Basis!.Before!))
        {
            Add(day.Key.Regimen, ObservedQuantity.MeanInitialDrainMilliliters, day, one => one.Record.InitialDrain!.Value.Milliliters - one.Basis!.DayCorrection, noise.WetDayMilliliters, 0, 1);
        }

        foreach (var both in nights.Where(night => night is { Ultrafiltration: not null, HoldsDay: true } && night.Basis!.Before == night.Basis.Response).GroupBy(night => night.Basis!.Response))
        {
            Add(
                both.Key.Regimen, ObservedQuantity.MeanNightAndDayUltrafiltrationMilliliters, both, one => one.Ultrafiltration!.Value.Milliliters - one.Basis!.NightCorrection - one.Basis.DayCorrection,
                Math.Sqrt(deviation * deviation + noise.WetDayMilliliters * noise.WetDayMilliliters), both.Key.ModelForm, 2);
        }

        return means.Count == 0
            ? throw new ArgumentException(
                until is null && changed < DateOnly.MaxValue
                    ? Invariant($"The review found a change that may have begun on {changed:yyyy-MM-dd}, and no night before it can be used. Test anew, or say which nights to take.")
                    : "Expected nights with a regimen and ultrafiltration that are not left out of the charts.",
                nameof(review))
            : new()
            {
                Patient = review.Patient,
                Means = means,
                Nights = used.Count,
                NightDeviation = Volume.FromMilliliters(deviation),
                OffsetDeviation = Volume.FromMilliliters(noise.OffsetMilliliters),
                Tested = review.Options.Tested,
                Findings = FindingsOf(review, used, until is null ? changed : DateOnly.MaxValue),
            };

        void Add(Regimen regimen, ObservedQuantity quantity, IEnumerable<ReviewedNight> of, Func<ReviewedNight, double> read, double ofOne, double modelForm, int offsets)
        {
            var all = of.ToList();
            used.UnionWith(all.Select(night => night.Record.Date));
            double[] values = [.. all.Select(read)];
            var middle = values.Median();
            var mean = middle + values.Average(value => Math.Clamp(value - middle, -Furthest * ofOne, Furthest * ofOne));
            var slow = Math.Min(values.Length, (1 + noise.WanderCorrelation) / (1 - noise.WanderCorrelation));
            var error = ofOne * Math.Sqrt((1 - noise.WanderShare + noise.WanderShare * slow) / values.Length);
            var shared = Math.Sqrt(offsets * noise.OffsetMilliliters * noise.OffsetMilliliters + modelForm * modelForm);
            means.Add(new(regimen, values.Length, new(quantity, regimen.NightLength, mean, error, shared, IsFitted: true)));
        }
    }

    private static List<Finding> FindingsOf(RecordReview review, HashSet<DateOnly> used, DateOnly changed)
    {
        List<Finding> findings = [];
        if (review.Nights.Count(night => night.Record.Date >= changed) is > 0 and var after)
        {
            findings.Add(new(Severity.Note, "nights-after-change-left-out", Invariant(
                $"{after} nights from {changed:yyyy-MM-dd} on are left out of the fit: the review found a change that may have begun there, and one membrane cannot be both.")));
        }

        if (used.Count < Few)
        {
            findings.Add(new(Severity.Warning, "nights-few", Invariant(
                $"{used.Count} nights feed the fit: how they differ is still what is usual in people, not this person's own. From {Few} on it is.")));
        }

        return findings;
    }
}
