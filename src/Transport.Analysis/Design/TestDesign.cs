using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Random;

namespace Transport.Analysis;

/// <summary>Designs the next test of one person: which samples would make a chosen number most precise.</summary>
/// <remarks>
/// Fisher information of the samples at membranes drawn from what is known, added to what is known; covariances are averaged over the membranes. Exact derivatives of what
/// would be measured; central differences of the target. See docs/concepts/test-design.md.
/// </remarks>
public static class TestDesign
{
    /// <summary>Advice after a fit: what is known is its posterior, as a Gaussian.</summary>
    /// <param name="fit">What is known.</param>
    /// <param name="target">What is to become more precise.</param>
    /// <param name="feasible">What could be sampled; null: <see cref="PlannedSample.Usual"/>. At most 12.</param>
    /// <param name="options">Errors and draws.</param>
    /// <param name="control">Stops the run.</param>
    /// <exception cref="ArgumentException">No sample, or more than 12.</exception>
    /// <exception cref="InvalidOperationException">The fit has no covariance.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static TestAdvice Run(
        FittedMembrane fit, DesignTarget target, IReadOnlyList<PlannedSample>? feasible = null, TestDesignOptions? options = null, RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(fit);
        var free = fit.Problem.Membrane.Count;
        return Run(
            fit.Patient, fit.Problem.Membrane, fit.Optimum.Coordinates.SubVector(0, free), fit.Covariance.SubMatrix(0, free, 0, free), target, feasible, options, control);
    }

    /// <summary>Advice before any test: what is known is what people are like.</summary>
    /// <param name="patient">Who is to be tested.</param>
    /// <param name="prior">What people are like.</param>
    /// <param name="target">What is to become more precise.</param>
    /// <param name="feasible">What could be sampled; null: <see cref="PlannedSample.Usual"/>. At most 12.</param>
    /// <param name="options">Errors and draws.</param>
    /// <param name="control">Stops the run.</param>
    /// <exception cref="ArgumentException">No sample, or more than 12.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static TestAdvice Run(
        Patient patient,
        PopulationPrior prior,
        DesignTarget target,
        IReadOnlyList<PlannedSample>? feasible = null,
        TestDesignOptions? options = null,
        RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(prior);
        var membrane = new MembraneCoordinates(
            prior.Center.ScaledTo(patient.BodySurface), prior, [.. Enum.GetValues<MembraneParameter>().Where(one => one != MembraneParameter.LargePoreFraction)]);
        return Run(
            patient, membrane, Vector<double>.Build.Dense(membrane.Count), Matrix<double>.Build.DenseIdentity(membrane.Count), target, feasible, options, control);
    }

    internal static TestAdvice Run(
        Patient patient,
        MembraneCoordinates membrane,
        Vector<double> center,
        Matrix<double> covariance,
        DesignTarget target,
        IReadOnlyList<PlannedSample>? feasible,
        TestDesignOptions? options,
        RunControl? control)
    {
        ArgumentNullException.ThrowIfNull(target);
        feasible ??= PlannedSample.Usual(patient);
        options ??= TestDesignOptions.Default;
        control ??= RunControl.None;
        if (feasible.Count is < 1 or > 12)
        {
            throw new ArgumentException("Expected 1 to 12 samples: every combination is looked at.", nameof(feasible));
        }

        var design = new DesignInformation(patient, membrane, feasible, target, options);
        var random = new MersenneTwister(options.Seed);
        var factor = covariance.Cholesky().Factor;
        var standard = Vector<double>.Build.Dense(center.Count);
        for (var i = 0; i < options.Membranes; i++)
        {
            control.Cancellation.ThrowIfCancellationRequested();
            standard.MapInplace(_ => options.Membranes == 1 ? 0 : Normal.Sample(random, 0, 1), Zeros.Include);
            design.Add(center + factor * standard);
            control.Progress?.Report((i + 1.0) / options.Membranes);
        }

        var known = covariance.Inverse();
        return new(target, feasible, samples => design.Precision(known, samples));
    }
}
