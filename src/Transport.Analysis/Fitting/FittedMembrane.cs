using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Random;

namespace Transport.Analysis;

/// <summary>A membrane estimated from observed exchanges, with what is needed to judge it.</summary>
public sealed class FittedMembrane : FittedModel
{
    internal FittedMembrane(
        ThreePoreProblem problem,
        FitProblem squares,
        LeastSquaresResult optimum,
        Matrix<double>? covariance,
        IReadOnlyList<FittedParameter> parameters,
        bool wasAskedFor)
        : base(problem, squares, optimum, covariance, parameters, wasAskedFor)
    {
        Membrane = problem.Membrane.Membrane(optimum.Coordinates.AsArray());
        Parameters = parameters;
    }

    internal ThreePoreProblem Problem => (ThreePoreProblem)Estimation;

    /// <summary>The nights that were fitted with them; null: none.</summary>
    public ObservedNights? Nights => Problem.Nights?.Nights;

    /// <summary>What the nights add to what the exchanges tell, of each free parameter; empty without nights.</summary>
    public IReadOnlyList<NightEvidence> NightEvidence { get; internal init; } = [];

    /// <summary>The estimate, at the patient's size. It states the plasma level that it is true with.</summary>
    public ThreePoreMembrane Membrane { get; }

    /// <summary>The free parameters.</summary>
    public override IReadOnlyList<FittedParameter> Parameters { get; }

    /// <summary>The parameter by name.</summary>
    /// <exception cref="ArgumentException">It was not free.</exception>
    public FittedParameter this[MembraneParameter parameter] => Parameters[Place(parameter)];

    /// <summary>Correlation of two estimates, of their logarithms (log odds of a share).</summary>
    /// <exception cref="ArgumentException">One of them was not free.</exception>
    /// <exception cref="InvalidOperationException">The data do not identify the parameters: there is no covariance.</exception>
    public double Correlation(MembraneParameter first, MembraneParameter second)
    {
        var (i, j) = (Place(first), Place(second));
        var known = Covariance;
        return known[i, j] / Math.Sqrt(known[i, i] * known[j, j]);
    }

    /// <summary>This fit, if it converged.</summary>
    /// <exception cref="InvalidOperationException">It did not; the message is the summary.</exception>
    public FittedMembrane OrThrow() => Status == FitStatus.Converged ? this : throw new InvalidOperationException(Summary);

    /// <summary>Membranes that are compatible with the data and the prior: draws from the Gaussian at the optimum, in log coordinates.</summary>
    /// <param name="count">How many.</param>
    /// <param name="seed">Seed of the draw.</param>
    /// <remarks>Quick, and good where the data decide. <see cref="MembraneSampling"/> draws from the posterior itself.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The count is less than 1.</exception>
    /// <exception cref="InvalidOperationException">The data do not identify the parameters: there is no covariance.</exception>
    public MembraneEnsemble ToGaussianEnsemble(int count = 400, int seed = 20261125)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var random = new MersenneTwister(seed);
        var free = Problem.Membrane.Count;
        var factor = Covariance.SubMatrix(0, free, 0, free).Cholesky().Factor;
        var center = Optimum.Coordinates.SubVector(0, free);
        var standard = Vector<double>.Build.Dense(free);
        var points = new Vector<double>[count];
        for (var i = 0; i < count; i++)
        {
            standard.MapInplace(_ => Normal.Sample(random, 0, 1), Zeros.Include);
            points[i] = center + factor * standard;
        }

        return Problem.Membrane.Ensemble(EnsembleSource.Posterior, seed, Membrane, count, (i, j) => points[i][j]);
    }

    private int Place(MembraneParameter parameter) => Problem.Membrane.Free.ToList().IndexOf(parameter) is >= 0 and var place
        ? place
        : throw new ArgumentException($"{parameter} was not free in this fit.", nameof(parameter));
}
