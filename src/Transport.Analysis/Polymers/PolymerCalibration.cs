using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.RootFinding;

namespace Transport.Analysis;

/// <summary>Finds the osmotic efficiency and the tissue uptake of a glucose polymer that return two published volumes.</summary>
/// <remarks>
/// Two unknowns for two figures: nothing is left over to be met by luck, and every other figure is a prediction. Efficiency scales the
/// early rate; uptake decides how soon it fades.
/// </remarks>
public static class PolymerCalibration
{
    private const double AccuracyMilliliters = 1e-6;
    private const int MostSteps = 100;

    // For the slopes of the volumes by the logarithm of each unknown.
    private const double LogStep = 1e-3;

    /// <summary>Calibrates a membrane. What it was before of the two is where the search begins.</summary>
    /// <param name="patient">Whose plasma.</param>
    /// <param name="membrane">Everything that is not sought.</param>
    /// <param name="dwell">The dwell of both series; its duration does not matter.</param>
    /// <param name="early">The earlier figure.</param>
    /// <param name="late">The later one.</param>
    /// <exception cref="ArgumentException">The dwell holds no polymer, or the second time is not later.</exception>
    /// <exception cref="MathNet.Numerics.NonConvergenceException">No positive pair returns the two volumes.</exception>
    public static CalibratedPolymer Run(Patient patient, ThreePoreMembrane membrane, Dwell dwell, VolumeTarget early, VolumeTarget late)
    {
        ArgumentNullException.ThrowIfNull(membrane);
        ArgumentNullException.ThrowIfNull(dwell);
        ArgumentNullException.ThrowIfNull(early);
        ArgumentNullException.ThrowIfNull(late);
        if (dwell.Solution.Polymer is null || late.Time <= early.Time)
        {
            throw new ArgumentException("Expected a polymer's dwell and a second time after the first.", nameof(dwell));
        }

        var whole = dwell with { Duration = late.Time };
        double[] start = [Math.Log(membrane.PolymerOsmoticEfficiency), Math.Log(Math.Max(0.1, membrane.PolymerTissueUptake.MillilitersPerMinute))];
        var root = Broyden.FindRoot(
            x => [Volumes(x)[0] - early.Mean.Milliliters, Volumes(x)[1] - late.Mean.Milliliters], start, AccuracyMilliliters, MostSteps);

        // From the standard errors of the two means to those of the two logarithms.
        var inverse = Matrix<double>.Build.DenseOfColumns([Slope(0), Slope(1)]).Inverse();
        var errors = Matrix<double>.Build.DenseOfDiagonalArray([Math.Pow(early.StandardError.Milliliters, 2), Math.Pow(late.StandardError.Milliliters, 2)]);
        var covariance = inverse * errors * inverse.Transpose();
        var (efficiency, uptake) = (Math.Exp(root[0]), Math.Exp(root[1]));
        return new()
        {
            Patient = patient,
            Dwell = whole,
            Early = early,
            Late = late,
            Membrane = With(root),
            EfficiencyError = efficiency * Math.Sqrt(covariance[0, 0]),
            UptakeError = Clearance.FromMillilitersPerMinute(uptake * Math.Sqrt(covariance[1, 1])),
            Correlation = covariance[0, 1] / Math.Sqrt(covariance[0, 0] * covariance[1, 1]),
        };

        ThreePoreMembrane With(double[] x) => membrane with
        {
            PolymerOsmoticEfficiency = Math.Exp(x[0]),
            PolymerTissueUptake = Clearance.FromMillilitersPerMinute(Math.Exp(x[1])),
        };

        double[] Volumes(double[] x)
        {
            var course = DwellSimulation.Run(patient, With(x), whole);
            return [course.NetUltrafiltrationAt(early.Time).Milliliters, course.NetUltrafiltrationAt(late.Time).Milliliters];
        }

        double[] Slope(int unknown)
        {
            double[] up = [.. root], down = [.. root];
            up[unknown] += LogStep;
            down[unknown] -= LogStep;
            return [.. Volumes(up).Zip(Volumes(down), (above, below) => (above - below) / (2 * LogStep))];
        }
    }
}
