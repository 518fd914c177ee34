using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>What is known of one person's membrane after the data: draws from the posterior, not only its top and its curvature there.</summary>
public sealed class MembranePosterior
{
    private readonly Chains chains;

    internal MembranePosterior(FittedMembrane fit, Chains chains, int seed)
    {
        Fit = fit;
        this.chains = chains;
        Seed = seed;
        var diagnostics = chains.Diagnostics();
        LargestRHat = diagnostics.Max(one => one.RHat);
        FewestBulkEffectiveDraws = diagnostics.Min(one => one.BulkEffectiveDraws);
        FewestTailEffectiveDraws = diagnostics.Min(one => one.TailEffectiveDraws);
        IsConverged = diagnostics.All(one => one.IsConverged);
        var membrane = fit.Problem.Membrane;
        Parameters = [.. membrane.Free.Select((parameter, j) =>
            PosteriorSummary.Of(parameter, parameter.PerUnit(fit.Patient.SurfaceFactor), membrane[j], chains[j], diagnostics[j]))];
        Findings =
        [
            .. fit.Findings,
            .. Chains.NotConverged(diagnostics, otherwise: ", or read the fit's intervals instead") is { } apart ? [apart] : Array.Empty<Finding>(),
            .. fit.Problem.Nights?.OffSimulation(chains) is { } off ? [off] : Array.Empty<Finding>(),
        ];
    }

    /// <summary>The fit that the chains started from.</summary>
    public FittedMembrane Fit { get; }

    /// <summary>The free parameters of the membrane.</summary>
    public IReadOnlyList<PosteriorParameter> Parameters { get; }

    /// <summary>Seed of the draws.</summary>
    public int Seed { get; }

    /// <summary>How many draws there are, over all chains.</summary>
    public int DrawCount => ILogDensity.Lanes * chains.Count;

    /// <summary>Share of the proposals that were accepted.</summary>
    public double AcceptedShare => chains.AcceptedShare;

    /// <summary>The largest R-hat of all coordinates, residual volumes included.</summary>
    public double LargestRHat { get; }

    /// <summary>The fewest effective draws, in the middle, of any coordinate, residual volumes included.</summary>
    public double FewestBulkEffectiveDraws { get; }

    /// <summary>The fewest effective draws, in the tails, of any coordinate, residual volumes included.</summary>
    public double FewestTailEffectiveDraws { get; }

    /// <summary>Whether the chains may be believed: R-hat under 1.01 and at least 400 effective draws, in the middle and in the tails.</summary>
    public bool IsConverged { get; }

    /// <summary>What to know about how it was made: those of the fit, and whether the chains agree.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>The parameter by name.</summary>
    /// <exception cref="ArgumentException">It was not free.</exception>
    public PosteriorParameter this[MembraneParameter parameter] =>
        Parameters.FirstOrDefault(one => one.Parameter == parameter) ?? throw new ArgumentException($"{parameter} was not free in this fit.", nameof(parameter));

    /// <summary>Draws of one parameter, chain after chain, in the unit of <see cref="Parameters"/>.</summary>
    /// <exception cref="ArgumentException">It was not free.</exception>
    public ImmutableArray<double> Draws(MembraneParameter parameter)
    {
        var membrane = Fit.Problem.Membrane;
        var j = membrane.Free.ToList().IndexOf(this[parameter].Parameter);
        var perUnit = parameter.PerUnit(Fit.Patient.SurfaceFactor);
        return [.. chains[j].SelectMany(chain => chain).Select(u => perUnit * membrane[j].Value(u))];
    }

    /// <summary>Membranes that are compatible with the data and the prior: draws evenly from all chains, at the patient's size.</summary>
    /// <param name="count">How many.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 1 or more than there are draws.</exception>
    public MembraneEnsemble ToEnsemble(int count = 400)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, DrawCount);
        return Fit.Problem.Membrane.Ensemble(EnsembleSource.Posterior, Seed, Fit.Membrane, count, (draw, coordinate) => chains.Even(draw, coordinate, count));
    }
}
