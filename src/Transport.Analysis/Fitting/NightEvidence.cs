namespace Transport.Analysis;

/// <summary>What nights add about one parameter of a membrane to what was known without them: by the exchanges, or by the prior where there were none.</summary>
/// <param name="Parameter">Which.</param>
/// <param name="LogDeviationBefore">Standard deviation of its logarithm (log odds of a share) without the nights.</param>
/// <param name="LogDeviation">The same with them.</param>
/// <param name="LogShift">Where the nights move its logarithm.</param>
public sealed record NightEvidence(MembraneParameter Parameter, double LogDeviationBefore, double LogDeviation, double LogShift)
{
    private const double NarrowedTo = 0.75;
    private const double Touched = 0.95;

    /// <summary>Share of the spread that the nights leave: 1 where they tell nothing.</summary>
    public double SpreadLeft => LogDeviation / LogDeviationBefore;

    /// <summary>"the nights narrow osmotic conductance to glucose: 0.42 of its doubt is left" (limits 0.75 and 0.95: choices).</summary>
    public string Words => SpreadLeft switch
    {
        <= NarrowedTo => FormattableString.Invariant($"the nights narrow {Parameter.Name()}: {SpreadLeft:0.00} of its doubt is left"),
        <= Touched => FormattableString.Invariant($"the nights say a little about {Parameter.Name()}: {SpreadLeft:0.00} of its doubt is left"),
        _ => $"the nights add nothing about {Parameter.Name()}",
    };
}
