namespace Transport;

/// <summary>Creatinine without what glucose added to it, where an assay asks for it: the one place that the reader of a sheet and a test share.</summary>
public static class CorrectedCreatinine
{
    /// <summary>Creatinine of a dialysate sample; null where it was not measured, or asks for a glucose that was not.</summary>
    public static Concentration? Of(CreatinineAssay assay, DialysateSample sample)
    {
        ArgumentNullException.ThrowIfNull(assay);
        ArgumentNullException.ThrowIfNull(sample);
        return !assay.Corrects ? sample.Creatinine
            : sample is { Creatinine: { } creatinine, Glucose: { } glucose } ? assay.Correct(creatinine, glucose)
            : null;
    }

    /// <summary>Mean plasma creatinine; null where not measured.</summary>
    /// <remarks>A sample without glucose is corrected with the mean plasma glucose of the others, or not at all: the correction is below 1 %.</remarks>
    public static Concentration? Of(CreatinineAssay assay, IReadOnlyList<PlasmaSample> plasma)
    {
        ArgumentNullException.ThrowIfNull(assay);
        ArgumentNullException.ThrowIfNull(plasma);
        var mean = Mean(plasma.Select(sample => sample.Glucose));
        return Mean(plasma.Select(sample => sample.Creatinine is { } creatinine && (sample.Glucose ?? mean) is { } glucose
            ? assay.Correct(creatinine, glucose)
            : sample.Creatinine));
    }

    /// <summary>Mean of what was measured; null where nothing was.</summary>
    internal static Concentration? Mean(IEnumerable<Concentration?> values) =>
        values.Average(value => value?.MillimolesPerLiter) is { } mean ? Concentration.FromMillimolesPerLiter(mean) : null;
}
