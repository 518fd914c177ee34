namespace Transport.Analysis;

/// <summary>One figure of a day, as a collection measured it and as the regimen was simulated to give it.</summary>
/// <param name="Measure">Which figure.</param>
/// <param name="Measured">The collection's, with the standard deviation of its assays and volumes.</param>
/// <param name="Deviation">Standard deviation of one such measurement in the measure's unit: assays, volumes, and how days differ where that is known.</param>
/// <param name="Simulated">Median and band; of a clearance over the collection's own blood, where its clock time is known.</param>
public sealed record CollectedFigure(OutcomeMeasure Measure, IndexValue Measured, double Deviation, Band<double> Simulated)
{
    // A gap that chance makes in one measurement of twenty (choice).
    private const double Deviations = 2;

    /// <summary>Measured less simulated.</summary>
    public double Difference => Measured.Value - Simulated.Median;

    /// <summary>The error of the measurement: two standard deviations (choice).</summary>
    public double Error => Deviations * Deviation;

    /// <summary>Whether the gap is more than the error of the measurement.</summary>
    public bool IsBeyondError => Math.Abs(Difference) > Error;

    /// <summary>Whether what was measured lies in the simulation's own band.</summary>
    public bool IsWithinBand => Measured.Value >= Simulated.Low && Measured.Value <= Simulated.High;
}
