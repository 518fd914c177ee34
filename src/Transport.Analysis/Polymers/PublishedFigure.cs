namespace Transport.Analysis;

/// <summary>A published figure of a polymer's dwell beside what a calibrated membrane says.</summary>
/// <param name="What">What was measured.</param>
/// <param name="Unit">Its unit; empty for a ratio.</param>
/// <param name="Low">Mean minus standard deviation, or the lower end of a printed range; the figure itself where neither is printed.</param>
/// <param name="Value">The figure; of a range its middle.</param>
/// <param name="High">Mean plus standard deviation, or the upper end of a printed range; the figure itself where neither is printed.</param>
/// <param name="StandardError">Standard error of the mean; null where it cannot be told.</param>
/// <param name="FirstDwell">Computed without polymer in plasma.</param>
/// <param name="RegularUser">Computed with a regular user's plasma.</param>
/// <param name="IsFitted">Whether the calibration used it. What it did not use is a prediction.</param>
public sealed record PublishedFigure(
    string What, string Unit, double Low, double Value, double High, double? StandardError, double FirstDwell, double RegularUser, bool IsFitted)
{
    private const double SingleFigureTolerance = 0.1;

    /// <summary>
    /// Whether one of the two columns meets it: within two standard errors of a mean, within a printed range, or within a tenth of a figure that stands alone.
    /// </summary>
    public bool IsMet => Meets(FirstDwell) || Meets(RegularUser);

    private bool Meets(double computed) =>
        StandardError is { } error ? Math.Abs(computed - Value) <= 2 * error
        : High > Low ? computed >= Low && computed <= High
        : Math.Abs(computed - Value) <= SingleFigureTolerance * Math.Abs(Value);
}
