using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>How one regimen stands to one target: met, not met, or not assessable, with the number and what it is worth.</summary>
/// <remarks>Care is directed at goals that are shared, not at one number. Symptoms, volume, nutrition and pressure are not assessed here.</remarks>
/// <param name="Target">The target.</param>
/// <param name="Assessment">How the median stands to it.</param>
/// <param name="Value">The figure; null where it cannot be given.</param>
/// <param name="ProbabilityOfMeeting">How probable it is that the mean of many days comes up to it; null where it is not assessable.</param>
/// <param name="ProbabilityOfSingleDay">The same of a single measured day; null where it is not known how days differ.</param>
/// <param name="Text">The same in words.</param>
public sealed record TargetAssessment(
    GuidelineTarget Target, Assessment Assessment, Band<double>? Value, Probability? ProbabilityOfMeeting, Probability? ProbabilityOfSingleDay, string Text)
{
    // Above 100 mL of urine a day residual function counts (KDOQI 2006, read).
    private const double LeastUrine = 100;

    /// <summary>Why it is not assessable, in a clause; empty where it is.</summary>
    public string Reason { get; private init; } = "";

    /// <summary>Value less target; null where it is not assessable.</summary>
    public double? Gap => Assessment == Assessment.NotAssessable ? null : Value?.Median - Target.Least;

    /// <summary>Whether one measured day could as well lie on the other side: the gap is below the noise of one collection.</summary>
    public bool IsWithinNoise => Gap is { } gap && Math.Abs(gap) < Target.NoiseOfOneDay * Target.Least;

    /// <summary>Whether targets and needs of adults are not this patient's.</summary>
    internal static bool IsChild(Patient patient) => patient.AgeYears < MembraneThresholds.Default.AdultAge.Value;

    /// <summary>One regimen beside one target.</summary>
    public static TargetAssessment Of(RegimenOutlook outlook, GuidelineTarget target)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        ArgumentNullException.ThrowIfNull(target);
        var value = outlook[target.Measure].Value;
        var urine = outlook.Outcome.Urine.Milliliters;
        var why = outlook.Options.Fit is FitStatus.DataContradictModel ? "the fit asks to check the sheet before reading further"
            : outlook.Options.Fit is FitStatus.IterationLimit ? "the search for the fit stopped before an optimum was found"
            : IsChild(outlook.Outcome.Patient) ? "targets of adults do not apply to a child, and no value for children is known here"
            : target.OnlyWithoutUrine && !outlook.Outcome.Patient.ResidualFunction.IsUrineStated ? "it is for patients without urine, and nothing was stated about urine"
            : target.OnlyWithoutUrine && urine > LeastUrine ? Invariant($"it is for patients without urine, and {urine:0} mL a day are stated")
            : target.OnlyAutomated && outlook.Regimens.All(regimen => regimen.Night.Length < 2) ? "it is for automated treatment"
            : outlook.Outcome.Patient.ResidualFunction is var kidneys && !target.Measure.IsKnownWith(kidneys) ? $"nothing was stated about {kidneys.Missing}, and it asks for peritoneum and kidneys together"
            : value is null ? "the figure cannot be given from what was measured"
            : null;
        if (why is not null)
        {
            return new(target, Assessment.NotAssessable, value, null, null, $"Not assessable: {why}.") { Reason = why };
        }

        var probability = outlook.ProbabilityAtLeast(target.Measure, target.Least)!.Value;
        var (median, digits) = (value!.Value.Median, target.Measure.Decimals);
        var single = outlook.ProbabilityOfSingleDayAtLeast(target.Measure, target.Least);
        var assessment = new TargetAssessment(target, median >= target.Least ? Assessment.Met : Assessment.NotMet, value, probability, single, "");
        var noise = target.NoiseOfOneDay == 0 ? "" : Invariant($" One measured day scatters by {100 * target.NoiseOfOneDay:0.0} %{(assessment.IsWithinNoise ? ", which is more than the gap" : "")}.");
        return assessment with
        {
            Text = Invariant($"{Number(median)} {target.Measure.Unit} where {Number(target.Least)} is asked for. {Days(single)}he mean of many days comes up to it with a probability of {probability}, which holds doubt of {probability.Doubt.Words()}.{noise} Symptoms, volume and nutrition are not assessed here."),
        };

        // The single day first: "90 % of the mean" is read as 9 days in 10.
        static string Days(Probability? single) => single?.InTen("measured day") is { } often
            ? $"{Wording.Capital(often)} {(often.Contains("days", StringComparison.Ordinal) ? "come" : "comes")} up to it, and t"
            : "T";

        string Number(double figure) => figure.ToString("F" + digits, System.Globalization.CultureInfo.InvariantCulture);
    }
}
