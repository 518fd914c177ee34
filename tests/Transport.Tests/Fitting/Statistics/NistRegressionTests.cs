using System.Globalization;

namespace Transport.Tests.Fitting.Statistics;

/// <summary>
/// reference-data/nist-strd-nonlinear: 27 certified regressions, each from both of its certified starts (read). Certified are eleven digits, so a relative
/// error of 5e-12 is none; ten digits are what the worst of them reach (docs/concepts/estimation.md), and one is left to other processors' exponentials.
/// </summary>
public sealed class NistRegressionTests
{
    private const double DemandedDigits = 9;

    /// <summary>Levenberg-Marquardt runs from this start into a plain where nothing changes the residuals any more.</summary>
    private const string Astray = "mgh17 start 1";

    /// <summary>Residuals of 1e-14, below the rounding of the data: neither their sum nor a standard deviation can be had in double precision.</summary>
    private const string Exact = "lanczos1";

    public static TheoryData<string, string> Problems
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var name in NistProblem.Names)
            {
                data.Add(name, "start 1");
                data.Add(name, "start 2");
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Problems))]
    public void A_certified_regression_is_solved_from_a_certified_start(string name, string start)
    {
        var (status, estimates, deviations) = Digits(name, start);
        if ($"{name} {start}" == Astray)
        {
            Assert.NotEqual(LeastSquaresStatus.Converged, status);
            return;
        }

        Assert.True(estimates >= DemandedDigits, $"{estimates:0.0} digits of the estimates");
        if (name != Exact)
        {
            Assert.Equal(LeastSquaresStatus.Converged, status);
            Assert.True(deviations >= DemandedDigits, $"{deviations:0.0} digits of the standard deviations");
        }
    }

    [Theory]
    [MemberData(nameof(Problems))]
    public void The_certified_answer_returns_the_certified_sum_of_squares(string name, string start)
    {
        // Eleven digits of the estimates are printed. At the optimum their rounding reaches the sum only by its square: six digits of the sum are asked for.
        // Each model is thereby known to be transcribed rightly, whatever the search does.
        var problem = new NistProblem(name);
        var residuals = MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(problem.RowCount);
        var slopes = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(problem.RowCount, problem.ParameterCount);
        Assert.True(problem.Evaluate(problem.ToCoordinates(problem.Values("certified")), residuals, slopes));

        // The exact problem's sum, 1e-25, is that of the rounding of its data.
        if (name != Exact)
        {
            Assert.Equal(1, residuals.DotProduct(residuals) / problem.ResidualSumOfSquares, 1e-6);
        }

        Assert.Equal(problem.ParameterCount, problem.Values(start).Length);
    }

    [Fact]
    public void The_problem_that_goes_astray_from_one_start_is_solved_when_both_are_tried()
    {
        var plain = new NistProblem("mgh17");
        var problem = plain.ScaledBy(plain.Values("start 2"));
        var both = LeastSquares.Run(
            problem, [problem.ToCoordinates(plain.Values("start 1")), problem.ToCoordinates(plain.Values("start 2"))], new() { Tolerance = 0 });
        Assert.True(both.IsConverged);
        Assert.Equal(1, both.Deviance / plain.ResidualSumOfSquares, 1e-9);
        Assert.Equal((2, 1), (both.StartsTried, both.StartsThere));
    }

    [Fact]
    public void The_page_on_estimation_prints_the_digits_that_are_reached()
    {
        // Whole digits, lower of estimates and standard deviations; a dash where a start is not solved. One digit either way is rounding of another machine.
        var page = File.ReadAllLines(Path.Combine(Repository.Root, "docs", "concepts", "estimation.md"));
        var rows = page.Where(line => line.StartsWith("| `", StringComparison.Ordinal)).Select(line => line.Split('|', StringSplitOptions.TrimEntries)).ToList();
        Assert.Equal(NistProblem.Names, rows.Select(row => row[1].Trim('`')));
        foreach (var row in rows)
        {
            var name = row[1].Trim('`');
            for (var s = 0; s < 2; s++)
            {
                var (_, estimates, deviations) = Digits(name, $"start {s + 1}");
                Check(row[2 + 2 * s], estimates, name);
                Check(row[3 + 2 * s], deviations, name);
            }
        }

        static void Check(string printed, double reached, string name)
        {
            if (printed == "–")
            {
                Assert.True(reached < 4, name);
            }
            else
            {
                Assert.InRange(reached, int.Parse(printed, CultureInfo.InvariantCulture) - 1, int.Parse(printed, CultureInfo.InvariantCulture) + 2);
            }
        }
    }

    private static (LeastSquaresStatus Status, double Estimates, double Deviations) Digits(string name, string start)
    {
        // Coordinates are parameters over the start's, so that all are of order one; residuals of unknown scale, so the search goes on to the rounding.
        var plain = new NistProblem(name);
        var problem = plain.ScaledBy(plain.Values(start));
        var found = LeastSquares.Run(
            problem, [problem.ToCoordinates(plain.Values(start))], new() { Tolerance = 0, MaximumIterations = 1000 });
        var estimates = Least(plain.Values("certified"), problem.ToParameters(found.Coordinates));
        if (found.Status == LeastSquaresStatus.NotIdentifiable)
        {
            return (found.Status, estimates, 0);
        }

        var variance = found.Deviance / (problem.RowCount - problem.ParameterCount);
        return (found.Status, estimates, Least(plain.Deviations, problem.ToDeviations(found.Covariance() * variance)));

        // The least number of right digits, at most the eleven that are certified.
        static double Least(double[] certified, double[] found) =>
            certified.Zip(found, (value, own) => Math.Clamp(-Math.Log10(Math.Abs(own / value - 1)), 0, 11)).Min();
    }
}
