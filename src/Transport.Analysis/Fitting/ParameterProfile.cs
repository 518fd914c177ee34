using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>Where one parameter may lie with all others free to follow it: its profile likelihood, prior included where the fit used one.</summary>
/// <param name="Parameter">Which.</param>
/// <param name="Estimate">The estimate, in the parameter's printed unit.</param>
/// <param name="Low">Lower end of the interval; null where the data leave it open.</param>
/// <param name="High">Upper end; null where it is open.</param>
/// <param name="Confidence">Confidence of the interval.</param>
/// <param name="Points">Value and rise of the deviance, for every value that was looked at, in order.</param>
/// <param name="FoundBetter">Whether the others' freedom led to a better optimum than the fit's.</param>
public sealed record ParameterProfile(
    MembraneParameter Parameter, double Estimate, double? Low, double? High, double Confidence, ImmutableArray<(double Value, double Rise)> Points, bool FoundBetter)
{
    /// <summary>What a table calls the parameter.</summary>
    public string Name => Parameter.Name();

    /// <summary>Its unit; empty where it has none.</summary>
    public string Unit => Parameter.Unit();

    /// <summary>How far the deviance may rise within the interval: the quantile of χ² with one degree of freedom.</summary>
    public double Limit => MathNet.Numerics.Distributions.ChiSquared.InvCDF(1, Confidence);
}
