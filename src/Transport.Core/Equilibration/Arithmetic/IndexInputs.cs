using static System.FormattableString;

namespace Transport;

/// <summary>One test under arithmetic: its samples by time, the choices, the residual volume, and the list of what could not be computed.</summary>
internal sealed class IndexInputs
{
    public static readonly TimeSpan FourHours = TimeSpan.FromHours(4);
    public static readonly TimeSpan OneHour = TimeSpan.FromHours(1);

    public IndexInputs(EquilibrationTest test, EquilibrationIndicesOptions options)
    {
        (Test, Options) = (test, options);
        Dilution = ResidualVolumeByDilution.Of(test, options);
        ResidualVolume = test.ResidualVolume ?? Dilution?.Volume;
    }

    public EquilibrationTest Test { get; }

    public EquilibrationIndicesOptions Options { get; }

    public MembraneThresholds Limits => Options.Thresholds;

    public List<MissingIndex> NotAvailable { get; } = [];

    public ResidualVolumeByDilution? Dilution { get; }

    /// <summary>As written, otherwise by dilution; null where neither is there.</summary>
    public Volume? ResidualVolume { get; }

    /// <summary>The residual volume where it has to be assumed: as known, as chosen, or the usual one for the patient's surface.</summary>
    public Volume AssumedResidualVolume => ResidualVolume ?? Options.AssumedResidualVolume ?? ResidualFluid.UsualVolume(Test.Patient.BodySurface);

    public bool IsAdult => Test.Patient.AgeYears >= Limits.AdultAge.Value;

    public TimeSpan EarlyTolerance => Minutes(Limits.EarlyTolerance);

    /// <summary>Standard deviation of a concentration by its assay's coefficient of variation, mmol/L.</summary>
    public double AssayDeviation(Concentration value) => Options.AssayVariation * Math.Abs(value.MillimolesPerLiter);

    public double SodiumDeviation(Concentration value) => Options.SodiumAssayVariation * Math.Abs(value.MillimolesPerLiter);

    /// <summary>Standard deviation of the entered volume, mL: a label hides more than a balance does.</summary>
    public double EnteredDeviation => double.Hypot(
        Options.VolumeDeviation.Milliliters,
        Test is { FillBasis: FillBasis.Label, Overfill: null } ? Limits.UnknownOverfill.Value / 2 : 0);

    public DialysateSample? Nearest(TimeSpan time, Threshold tolerance, Func<DialysateSample, Concentration?> read) => Test.Dialysate
        .Where(sample => read(sample) is not null && (sample.Time - time).Duration() <= Minutes(tolerance))
        .MinBy(sample => (sample.Time - time).Duration());

    public DialysateSample? Initial(Func<DialysateSample, Concentration?> read) => Nearest(TimeSpan.Zero, Limits.EarlyTolerance, read);

    public DialysateSample? AtOneHour(Func<DialysateSample, Concentration?> read) => Nearest(OneHour, Limits.EarlyTolerance, read);

    public DialysateSample? AtEndOfDwell(Func<DialysateSample, Concentration?> read) => Nearest(Test.Dwell, Limits.FourHourTolerance, read);

    public IndexValue? Missing(string name, string reason)
    {
        NotAvailable.Add(new(name, reason));
        return null;
    }

    public static string At(DialysateSample sample, string what) => Invariant($"{what} at {sample.Time.TotalMinutes:0} min not measured");

    public static TimeSpan Minutes(Threshold threshold) => TimeSpan.FromMinutes(threshold.Value);

    public static double Square(double value) => value * value;
}
