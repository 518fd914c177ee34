using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>Profile likelihood of one coordinate: the least deviance for each of its values, and the interval in which it rises by no more than χ² allows.</summary>
/// <remarks>
/// Followed outward from the optimum, each point started from its neighbor. The signed root of the rise is a straight line for a linear problem, so the
/// ends are found on it by regula falsi (Illinois), in a few points.
/// </remarks>
internal static class Profile
{
    /// <summary>The interval of one coordinate.</summary>
    /// <param name="problem">A problem with whitened residuals.</param>
    /// <param name="optimum">Where its deviance is least.</param>
    /// <param name="coordinate">Index of the coordinate.</param>
    /// <param name="options">How.</param>
    /// <param name="control">Stops the run.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such coordinate.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static ProfileInterval Run(
        ILeastSquaresProblem problem, LeastSquaresResult optimum, int coordinate, ProfileOptions? options = null, RunControl? control = null)
    {
        options ??= ProfileOptions.Default;
        ArgumentOutOfRangeException.ThrowIfNegative(coordinate);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(coordinate, problem.ParameterCount);
        var side = new Side(problem, optimum, coordinate, options, control ?? RunControl.None);
        var low = side.End(-1);
        var high = side.End(+1);
        side.Points.Sort((a, b) => a.Coordinate.CompareTo(b.Coordinate));

        // Rounding aside: a rise of −1e-6 is a thousandth of a standard error.
        return new(optimum.Coordinates[coordinate], low, high, side.Points, side.Points.Exists(point => point.Rise < -1e-6), side.Evaluations);
    }

    private sealed class Side(
        ILeastSquaresProblem problem, LeastSquaresResult optimum, int coordinate, ProfileOptions options, RunControl control)
    {
        private readonly double target = Math.Sqrt(ChiSquared.InvCDF(1, options.Confidence));
        private readonly double center = optimum.Coordinates[coordinate];
        private readonly FixedCoordinate rest = new(problem, coordinate);
        private Vector<double> neighbor = Vector<double>.Build.Dense(0);

        public List<(double Coordinate, double Rise)> Points { get; } = [(optimum.Coordinates[coordinate], 0)];

        public int Evaluations { get; private set; }

        public double? End(int sign)
        {
            neighbor = FixedCoordinate.Without(optimum.Coordinates, coordinate);
            var (near, atNear) = (0.0, -target);
            var step = Math.Min(options.Reach, target * StandardError());
            var (far, atFar) = (step, Root(sign * step) - target);
            while (atFar < 0)
            {
                if (far >= options.Reach)
                {
                    return null;
                }

                (near, atNear) = (far, atFar);

                // By what the last step rose, at most double: a profile that flattens is followed, not leapt over.
                far = Math.Min(options.Reach, far * Math.Clamp(1.1 * target / Math.Max(atFar + target, 1e-3), 1.05, 2));
                atFar = Root(sign * far) - target;
            }

            var last = 0;
            for (var i = 0; i < 60; i++)
            {
                var between = far - atFar * (far - near) / (atFar - atNear);
                var at = Root(sign * between) - target;
                if (Math.Abs(at) <= options.Tolerance || far - near < 1e-12)
                {
                    return center + sign * between;
                }

                if (at > 0)
                {
                    (far, atFar) = (between, at);
                    atNear = last > 0 ? atNear / 2 : atNear;
                    last = 1;
                }
                else
                {
                    (near, atNear) = (between, at);
                    atFar = last < 0 ? atFar / 2 : atFar;
                    last = -1;
                }
            }

            return center + sign * far;
        }

        private double StandardError()
        {
            var error = optimum.IsConverged ? Math.Sqrt(optimum.Covariance()[coordinate, coordinate]) : double.NaN;
            return double.IsFinite(error) ? error : 1;
        }

        // Where the model is not defined the deviance is without bound: a wall that ends the interval.
        private double Root(double offset)
        {
            rest.Value = center + offset;
            double deviance;
            if (problem.ParameterCount == 1)
            {
                deviance = rest.DevianceAlone();
                Evaluations++;
            }
            else
            {
                var found = LeastSquares.Run(rest, [neighbor], new() { AgreeingStarts = 1 }, control);
                Evaluations += found.Evaluations;
                deviance = found.Deviance;
                neighbor = found.Coordinates;
            }

            if (!double.IsFinite(deviance))
            {
                return 1e6;
            }

            Points.Add((rest.Value, deviance - optimum.Deviance));
            return Math.Sqrt(Math.Max(0, deviance - optimum.Deviance));
        }
    }
}
