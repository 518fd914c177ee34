using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>How one regimen stands to one target: met, not met, or not assessable, with the number and what it is worth.</summary>
/// <remarks>Care is directed at goals that are shared, not at one number. Symptoms, volume, nutrition and pressure are not assessed here.</remarks>
/// <param name="Target">The target.</param>
/// <param name="Assessment">How the median stands to it.</param>
/// <param name="Value">The figure; null where it cannot be given.</param>
/// <param name="ProbabilityOfMeeting">Share of the draws that come up to it, 0 to 1; null where it is not assessable.</param>
/// <param name="Text">The same in words.</param>
public sealed record TargetAssessment(GuidelineTarget Target, Assessment Assessment, Band<double>? Value, double? ProbabilityOfMeeting, string Text)
{
    // Above 100 mL of urine a day residual function counts (KDOQI 2006, read).
    private const double LeastUrine = 100;

    /// <summary>Value less target; null where it is not assessable.</summary>
    public double? Gap => Assessment == Assessment.NotAssessable ? null : Value?.Median - Target.Least;

    /// <summary>Whether one measured day could as well lie on the other side: the gap is below the noise of one collection.</summary>
    public bool IsWithinNoise => Gap is { } gap && Math.Abs(gap) < Target.NoiseOfOneDay * Target.Least;

    /// <summary>One regimen beside one target.</summary>
    public static TargetAssessment Of(RegimenOutlook outlook, GuidelineTarget target)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        ArgumentNullException.ThrowIfNull(target);
        var value = outlook[target.Measure].Value;
        var urine = outlook.Outcome.Urine.Milliliters;
        var why = target.OnlyWithoutUrine && urine > LeastUrine ? Invariant($"it is for patients without urine, and {urine:0} mL a day are stated")
            : target.OnlyAutomated && outlook.Regimens.All(regimen => regimen.Night.Length < 2) ? "it is for automated treatment"
            : value is null ? "the figure cannot be given from what was measured"
            : null;
        if (why is not null)
        {
            return new(target, Assessment.NotAssessable, value, null, $"Not assessable: {why}.");
        }

        var probability = outlook.ProbabilityAtLeast(target.Measure, target.Least)!.Value;
        var (median, digits) = (value!.Value.Median, target.Measure.Decimals);
        var assessment = new TargetAssessment(target, median >= target.Least ? Assessment.Met : Assessment.NotMet, value, probability, "");
        var noise = target.NoiseOfOneDay == 0 ? "" : Invariant($" One measured day scatters by {100 * target.NoiseOfOneDay:0.0} %{(assessment.IsWithinNoise ? ", which is more than the gap" : "")}.");
        return assessment with
        {
            Text = Invariant($"{(assessment.Assessment == Assessment.Met ? "Met" : "Not met")}: {Number(median)} {target.Measure.Unit} where {Number(target.Least)} is asked for, {Often(probability)} of the membranes that fit the test.{noise} Symptoms, volume and nutrition are not assessed here."),
        };

        static string Often(double share) => Math.Round(10 * share) switch
        {
            0 => "in fewer than 1 in 10",
            10 => "in more than 9 in 10",
            var tenths => Invariant($"in about {tenths:0} in 10"),
        };

        string Number(double figure) => figure.ToString("F" + digits, System.Globalization.CultureInfo.InvariantCulture);
    }
}
