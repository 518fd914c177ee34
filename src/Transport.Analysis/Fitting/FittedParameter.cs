namespace Transport.Analysis;

/// <summary>One estimated parameter with its uncertainty and its prior, per 1.73 m² of body surface where it is extensive.</summary>
/// <param name="Parameter">Which.</param>
/// <param name="Name">What a table calls it.</param>
/// <param name="Unit">Its unit; empty where it has none.</param>
/// <param name="Value">The estimate, in the unit.</param>
/// <param name="LogStandardError">Standard error of its logarithm: 0.10 is about 10 %.</param>
/// <param name="PriorMedian">Median of the prior, in the unit.</param>
/// <param name="PriorLogDeviation">Standard deviation of the prior's logarithm.</param>
public sealed record FittedParameter(
    MembraneParameter Parameter, string Name, string Unit, double Value, double LogStandardError, double PriorMedian, double PriorLogDeviation)
{
    /// <summary>Lower end of the 90 % interval.</summary>
    public double Low => Value * Math.Exp(-1.6449 * LogStandardError);

    /// <summary>Upper end of the 90 % interval.</summary>
    public double High => Value * Math.Exp(1.6449 * LogStandardError);

    /// <summary>Share of the prior's spread that is left: 0 (the data decide) to 1 (the prior is returned).</summary>
    public double SpreadLeft => Math.Min(1, LogStandardError / PriorLogDeviation);

    /// <summary>Where the estimate comes from.</summary>
    public ParameterVerdict Verdict => Contraction.Of(SpreadLeft);
}
